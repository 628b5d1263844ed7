import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm } from '@garboard/seed/builders';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];
const entry = catalogue.find(({ key }) => key === 'gas-locker-drain-shared');
if (!entry) throw new Error('The entry this test reads is gone.');

let server: TestServer;
let browser: Browser;
let surveyor: Visitor;

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor']);
  const passwordHash = await hashPassword(password);
  await inTransaction(server.db, [], (tx) =>
    tx.person.update({ where: { id: firm.surveyor.id }, data: { passwordHash } }),
  );
  surveyor = await Visitor.arrive(browser, server.url, complaints);
  await surveyor.signIn(firm.surveyor, password);
}, 90_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

describe('the catalogue in a browser', { timeout: 90_000 }, () => {
  it('is searched with a slip of the pen, and an entry is read with its drawing', async () => {
    await surveyor.follow('Catalogue');
    await surveyor.reads('Known defects: what to look for');
    await surveyor.fill('Words', 'gas lokcer drain', 'searchbox');
    await surveyor.reads('Shown for “gas locker drain”');
    await surveyor.picture('catalogue');
    expect(await surveyor.widthAt360('catalogue')).toBeLessThanOrEqual(360);
    await surveyor.follow(entry.title);
    await surveyor.reads(entry.lookFor);
    await surveyor.reads(entry.cautions[0] ?? '');
    if (entry.diagram) expect(await surveyor.page.$$eval('.svg-picture > svg', (all) => all.length)).toBe(1);
    await surveyor.picture('catalogue-entry');
    expect(await surveyor.widthAt360('catalogue-entry')).toBeLessThanOrEqual(360);
  });

  it('takes the firm’s own words, keeps the versions, and goes back to ours', async () => {
    await surveyor.follow('Write it in our words');
    await surveyor.fill('Title', 'Drain of the gas locker shared with another');
    await surveyor.fill('What to do', 'כבלים ומים '.repeat(900).trim());
    await surveyor.picture('catalogue-editor');
    expect(await surveyor.widthAt360('catalogue-editor')).toBeLessThanOrEqual(360);
    await surveyor.press('Save');
    await surveyor.reads('Our wording, version 2');
    await surveyor.reads('(in use)');
    expect(await surveyor.widthAt360('catalogue-long')).toBeLessThanOrEqual(360);
    await surveyor.press('Go back to Garboard’s words');
    await surveyor.click('button', 'Go back to Garboard’s words');
    await surveyor.reads('Garboard’s, version 1');
  });

  it('chooses an entry by the keys alone', async () => {
    await surveyor.goTo('/catalogue/new');
    await surveyor.page.locator('summary ::-p-text(Inspect also)').click();
    await surveyor.page.locator('.choose-entry input').click();
    await surveyor.page.keyboard.type('moused shakle');
    await surveyor.reads('Shown for “moused shackle”');
    await surveyor.page.keyboard.press('ArrowDown');
    await surveyor.page.keyboard.press('Enter');
    await surveyor.reads('Inspect also, 1');
    await surveyor.picture('catalogue-choose');
  });

  it('runs without an error in the console', () => {
    expect(complaints).toEqual([]);
  });
});
