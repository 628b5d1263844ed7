import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { openMailer } from '@garboard/platform/mail';
import axe, { type AxeResults } from 'axe-core';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { mailWorker, toldScene } from '../notices/scene.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
let server: TestServer;
let browser: Browser;
const complaints: Complaints = [];

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  browser = await openBrowser();
}, 300_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function looks({ page }: Visitor, name: string): Promise<void> {
  for (const width of [1280, 360]) {
    await page.setViewport({ width, height: 900 });
    await page.screenshot({ path: `tests/artefacts/browser/${name}-${width}.png`, fullPage: true });
    await page.evaluate(axe.source);
    const found = (await page.evaluate(() =>
      (window as unknown as { axe: typeof axe }).axe.run(),
    )) as AxeResults;
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  }
  await page.setViewport({ width: 1280, height: 900 });
}

it('an insurer sees what is new, reads it, and chooses what is mailed', { timeout: 240_000 }, async () => {
  const scene = await toldScene(server);
  const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
  await scene.sendEvidence(owner, await scene.addFinding('Gas hose perished at the bulkhead'));
  await scene.sendEvidence(owner, await scene.addFinding('Regulator out of date'));
  await mailWorker(server, openMailer({ dataDir: server.dataDir, from: 'G <g@g.example>' })).work();
  const passwordHash = await hashPassword(password);
  await inTransaction(server.db, [], (tx) =>
    tx.person.update({ where: { id: insurer.id }, data: { passwordHash, joinedAt: new Date() } }),
  );
  const visitor = await Visitor.arrive(browser, server.url, complaints);
  await visitor.signIn(insurer, password);
  await visitor.follow('Notices, 2 new');
  await visitor.reads('The owner sent evidence on finding 2, “Regulator out of date”: Hose renewed.');
  await looks(visitor, 'notices');
  await visitor.follow('The owner sent evidence on finding 2, “Regulator out of date”: Hose renewed.');
  await visitor.find('heading', 'Regulator out of date').catch(() => visitor.reads('Regulator out of date'));
  await visitor.follow('Notices, 1 new');
  await visitor.press('Mark all as read');
  await visitor.find('link', 'Notices');
  await visitor.click('checkbox', 'Only what is not read');
  await visitor.reads('You have read everything');
  await visitor.follow('What is mailed to you, and how often');
  await visitor.choose('Language of mails', 'Deutsch');
  await visitor.fill('Time zone (optional)', 'Nowhere/At-all');
  await visitor.choose('Evidence comes in', 'By mail, once a day');
  await visitor.press('Save');
  await visitor.reads('Must be an IANA time zone such as Europe/Lisbon.');
  await visitor.fill('Time zone (optional)', 'Europe/Berlin');
  await visitor.press('Save');
  await visitor.reads('Saved.');
  await looks(visitor, 'notice-settings');
  expect((await server.as(insurer).get('/v1/me/notice-settings')).body).toMatchObject({
    language: 'de',
    timeZone: 'Europe/Berlin',
    topics: { evidence: 'daily', overdue: 'weekly', reports: 'at-once' },
  });
  expect(complaints.filter((line) => line !== '422 PATCH /v1/me/notice-settings')).toEqual([]);
});
