import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAllCoverage } from '../support/coverage.ts';
import { issueReport } from '../support/issue-report.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
let server: TestServer;
let browser: Browser;
let cast: Record<'surveyor' | 'owner' | 'insurer' | 'yard', Signed>;
let path: string;
const complaints: Complaints = [];
const windows: Visitor[] = [];

beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  browser = await openBrowser();
  const firm = await buildFirm(server.db, ['surveyor']);
  const [owner, insurer, yard] = [
    await buildPerson(server.db, { name: 'Orla Fennimore', email: 'orla@fennimore.example' }),
    await buildPerson(server.db, { name: 'Idris Calloway', email: 'idris@calloway.example' }),
    await buildPerson(server.db, { name: 'Ropewalk Yard', email: 'office@ropewalk.example' }),
  ];
  cast = { surveyor: firm.surveyor, owner, insurer, yard };
  const passwordHash = await hashPassword(password);
  const id = { in: Object.values(cast).map((person) => person.id) };
  await inTransaction(server.db, [], (tx) =>
    tx.person.updateMany({ where: { id }, data: { passwordHash, joinedAt: new Date() } }),
  );
  const api = server.as(firm.surveyor);
  const vessel = await api.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const attendances = [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' }];
  const open = { vesselId: vessel.body.id, purpose: 'insurance', attendances };
  const survey = await api.post('/v1/surveys').send(open).expect(201);
  for (const title of ['Gas line loses pressure', 'Seacock seized']) {
    const words = { title, system: 'gas', observed: 'Seen.', recommendation: 'Mend.', urgency: 'before-use' };
    await api.post(`/v1/surveys/${survey.body.id}/findings`).send(words).expect(201);
  }
  await answerAllCoverage(api, survey.body.id);
  await issueReport(server, firm.id, api, survey.body.id);
  path = `/surveys/${survey.body.id}`;
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function windowOf(who: keyof typeof cast): Promise<Visitor> {
  const visitor = await Visitor.arrive(browser, server.url, complaints);
  await visitor.signIn(cast[who], password);
  windows.push(visitor);
  return visitor;
}

/** Sent by Enter in the form: the line that says what was done may lie over the button. */
const send = async (visitor: Visitor) => {
  await (await visitor.find('textbox', 'E-mail')).focus();
  await visitor.page.keyboard.press('Enter');
};

async function invite(visitor: Visitor, role: string, { name, email }: Signed) {
  await visitor.choose('As', role);
  await visitor.fill('Name', name);
  await visitor.fill('E-mail', email);
}

describe('parties in a browser', { timeout: 120_000 }, () => {
  it('the firm says who pays; who pays releases the report and sees who opened it', async () => {
    const surveyor = await windowOf('surveyor');
    await surveyor.goTo(`${path}/parties`);
    await surveyor.reads('Nobody outside the firm has been invited');
    await invite(surveyor, 'Owner', cast.owner);
    await surveyor.click('checkbox', 'They pay for the survey, and say to whom the report is released');
    await send(surveyor);
    await surveyor.reads('Orla Fennimore invited.');
    await surveyor.reads('Pays for the survey');
    await invite(surveyor, 'Insurer', cast.insurer);
    await send(surveyor);
    await surveyor.reads('Idris Calloway invited.');

    const insurer = await windowOf('insurer');
    await insurer.goTo(path);
    await insurer.reads('has not been released to you');

    const owner = await windowOf('owner');
    await owner.goTo(path);
    await owner.reads('You pay for this survey');
    await owner.follow('See the parties or invite a yard');
    await owner.press('Release to Idris Calloway');
    await owner.reads('Released to Idris Calloway.');
    await insurer.goTo(path);
    await insurer.reads('Seacock seized');
    await owner.goTo(`${path}/parties`);
    await owner.reads('Last opened on');
    await owner.reads('Survey report looked at, revision 1');
    await owner.picture('parties-owner-who-pays');
    expect(await owner.widthAt360('parties-owner-who-pays')).toBeLessThanOrEqual(360);
    await owner.press('Withdraw the release to Idris Calloway');
    await owner.reads('No longer released to Idris Calloway.');
    await insurer.goTo(path);
    await insurer.reads('has not been released to you');
  });

  it('a yard sees the findings that the owner gives it', async () => {
    const [, , owner] = windows as [Visitor, Visitor, Visitor];
    await owner.fill('Name', cast.yard.name);
    await owner.fill('E-mail', cast.yard.email);
    await (await owner.find('checkbox', '2. Seacock seized')).focus();
    await owner.page.keyboard.press('Space');
    await send(owner);
    await owner.reads('Puts right 1 finding');
    const yard = await windowOf('yard');
    await yard.goTo(path);
    await yard.reads('Gas line loses pressure');
    expect(await yard.text()).not.toContain('Seacock seized');
    await owner.press('Findings of Ropewalk Yard');
    await owner.find('dialog', 'What Ropewalk Yard puts right');
    await owner.picture('parties-yard-findings');
    await owner.page.evaluate(() => {
      const dialog = document.querySelector('[role="dialog"]');
      const boxes = [...(dialog?.querySelectorAll<HTMLInputElement>('input[type="checkbox"]') ?? [])];
      for (const box of boxes) box.click();
    });
    await owner.press('Save');
    await owner.reads('Ropewalk Yard puts right 1 finding.');
    await yard.goTo(path);
    await yard.reads('Seacock seized');
    expect(await yard.text()).not.toContain('Gas line loses pressure');
    await owner.page.$$eval('details', (all) => {
      for (const one of all) one.open = true;
    });
    await owner.reads('Those it puts right');
    await owner.picture('parties-who-sees-what');
    expect(await owner.widthAt360('parties-who-sees-what')).toBeLessThanOrEqual(360);
    const [surveyor] = windows as [Visitor];
    await surveyor.goTo(`${path}/parties`);
    await surveyor.reads('Puts right 1 finding');
    await surveyor.picture('parties-surveyor');
    await surveyor.widthAt360('parties-surveyor');
    expect(complaints).toEqual([]);
  });
});
