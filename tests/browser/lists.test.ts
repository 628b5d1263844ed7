import { hashPassword } from '@garboard/core/people/passwords';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { addDays } from '@garboard/trade/due-dates';
import type { Browser } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildIssuedSurvey, buildRecommendation } from '../support/recommendations.ts';
import { startServer, type TestServer } from '../support/server.ts';
import { buildPortal, type Complaints, openBrowser, Visitor } from './visitor.ts';

const password = 'a long enough passphrase';
const complaints: Complaints = [];
const today = new Date().toISOString().slice(0, 10);
let server: TestServer;
let browser: Browser;
let insurer: Signed;
let office: Signed;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor' | 'office'>>>;
const sent: { id: string; clearanceId: string }[] = [];

/** An underwriter with boats of two firms, and the office of one of these with a job at each stage. */
async function fill(): Promise<void> {
  firm = await buildFirm(server.db, ['surveyor', 'office']);
  const other = await buildFirm(server.db, ['surveyor']);
  await inTransaction(server.db, [firm.id, other.id], async (tx) => {
    await tx.firm.update({ where: { id: firm.id }, data: { name: 'Fennel Reach Surveys' } });
    await tx.firm.update({ where: { id: other.id }, data: { name: 'Pillar Rock Marine' } });
    await tx.person.update({ where: { id: firm.surveyor.id }, data: { name: 'Sela Quayle' } });
  });
  insurer = await buildPerson(server.db, { name: 'Idris Calloway' });
  office = firm.office;
  const passwordHash = await hashPassword(password);
  const id = { in: [insurer.id, office.id] };
  await inTransaction(server.db, [], (tx) => tx.person.updateMany({ where: { id }, data: { passwordHash } }));
  const parties = [{ id: insurer.id, role: 'insurer' as const }];
  const surveyorId = firm.surveyor.id;
  const boats = ['Tansy Rook', 'Marsh Harrier', 'Little Egret', 'Sedge Warbler'];
  for (const [n, boat] of boats.entries()) {
    const whose = n < 3 ? firm : other;
    const number = `2026-00${n + 10}`;
    const survey = await buildIssuedSurvey(server, whose, {
      ...{ boat, number, parties },
      ...(n < 3 ? { surveyorId } : {}),
    });
    const add = (at: number, title: string, state: string, days: number | null) =>
      buildRecommendation(server, whose, survey.id, {
        ...{ number: at, title, state, dueOn: days === null ? null : addDays(today, days) },
        ...{ urgency: at === 1 ? 'before-use' : 'within-days' },
      });
    await add(1, 'Gas hose cracked at the regulator', n === 1 ? 'cleared' : 'open', n * 9 - 6);
    sent.push(await add(2, 'Fuel filler hose perished', 'evidence-sent', n * 3 + 2));
    await add(3, 'Bilge pump float switch stuck', 'returned', 40);
  }
  const hidden = [{ id: insurer.id, role: 'insurer' as const, released: false }];
  await buildIssuedSurvey(server, firm, { boat: 'Grey Phalarope', number: '2026-0020', parties: hidden });
  const stages = ['enquiry', 'booked', 'booked', 'attended', 'drafting', 'in-review', 'closed'];
  for (const [n, state] of stages.entries()) {
    const boat = `Boat at ${n + 1}`;
    const { id: surveyId } = await buildIssuedSurvey(server, firm, {
      ...{ boat, number: `2026-003${n}`, state, surveyorId },
    });
    if (state !== 'booked') continue;
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.attendance.create({
        data: {
          ...{ id: newId(), firmId: firm.id, surveyId, ordinal: 0, place: 'Hard 3', condition: 'ashore' },
          date: new Date(`${addDays(today, n === 1 ? 3 : -2)}T00:00:00Z`),
        },
      }),
    );
  }
}

let underwriter: Visitor;
let manager: Visitor;
beforeAll(async () => {
  const portalDir = await buildPortal();
  server = await startServer({ portalDir });
  await fill();
  browser = await openBrowser();
  underwriter = await Visitor.arrive(browser, server.url, complaints);
  await underwriter.signIn(insurer, password);
  manager = await Visitor.arrive(browser, server.url, complaints);
  await manager.signIn(office, password);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const rows = (visitor: Visitor) =>
  visitor.page.$$eval('tbody tr', (all) => all.map((row) => row.textContent ?? ''));

describe('the underwriter’s page', { timeout: 120_000 }, () => {
  it('tells at once what waits for a decision, is overdue and is due soon', async () => {
    await underwriter.goTo('/recommendations');
    await underwriter.reads('On 5 vessels surveyed by 2 firms');
    await underwriter.reads('of 1 survey nothing has been released to you');
    await underwriter.find('link', '4 waiting for your decision');
    await underwriter.find('link', '1 overdue');
    await underwriter.picture('lists-1-recommendations');
    expect(await underwriter.widthAt360('lists-1-recommendations')).toBeLessThanOrEqual(360);
    await underwriter.follow('1 overdue');
    await underwriter.reads('1 recommendation, soonest due first');
    // The list and its count are asked for apart.
    await expect.poll(() => rows(underwriter)).toHaveLength(1);
  });

  it('shows its vessels, and from each what is to be done about it', async () => {
    await underwriter.follow('By vessel');
    await underwriter.reads('Not released to you yet');
    await underwriter.picture('lists-2-vessels');
    expect(await underwriter.widthAt360('lists-2-vessels')).toBeLessThanOrEqual(360);
    await underwriter.choose('Survey firm', 'Pillar Rock Marine');
    await underwriter.readsNoMore('Tansy Rook');
    await underwriter.follow('Sedge Warbler');
    await underwriter.reads('Only Sedge Warbler.');
    await underwriter.press('Show all vessels');
    await underwriter.reads('Tansy Rook: ');
  });

  it('keeps filters as a view, and comes back to them', async () => {
    await underwriter.goTo('/recommendations');
    await underwriter.choose('State', 'Evidence returned');
    await underwriter.choose('Order', 'Vessel');
    await underwriter.press('Keep these filters as a view');
    await underwriter.fill('Name', 'Sent back');
    await underwriter.press('Keep the view');
    await underwriter.find('link', 'Sent back');
    await underwriter.goTo('/recommendations');
    await underwriter.follow('Sent back');
    await underwriter.reads('4 recommendations, by vessel');
    await underwriter.press('Rename or delete this view');
    await underwriter.press('Delete this view');
    await underwriter.reads('is no longer among your views');
    await underwriter.press('Keep these filters as a view');
    await underwriter.press('Cancel');
  });

  it('accepts several at once, and tells which were decided by somebody else meanwhile', async () => {
    await underwriter.goTo('/recommendations');
    await underwriter.follow('4 waiting for your decision');
    await underwriter.reads('4 recommendations, waiting longest first');
    await underwriter.click('checkbox', 'Choose all 4 shown that wait for your decision');
    await underwriter.reads('4 recommendations chosen');
    await underwriter.picture('lists-3-chosen');
    await server
      .as(insurer)
      .post(`/v1/clearances/${sent[2]?.clearanceId}/decision`)
      .send({ decision: 'return', reason: 'No photo.' })
      .expect(200);
    await underwriter.press('Accept their evidence…');
    await underwriter.fill('Reason', 'Invoices and photos seen.');
    await underwriter.picture('lists-4-accept');
    await underwriter.press('Accept all 4');
    await underwriter.reads('Not all of them were accepted');
    await underwriter.reads('Little Egret: Fuel filler hose perished. Idris Calloway decided');
    await underwriter.picture('lists-5-refused');
    await underwriter.press('Close');
    await underwriter.reads('No recommendation matches');
    await underwriter.readsNoMore('waiting for your decision');
    await underwriter.choose('State', 'Decided');
    await underwriter.choose('Waiting for', 'Anybody');
    await underwriter.reads('4 recommendations');
  });

  it('takes the list along as CSV', async () => {
    const href = await (await underwriter.find('link', 'Download as CSV')).evaluate((a) =>
      (a as HTMLAnchorElement).getAttribute('href'),
    );
    const text = await underwriter.page.evaluate(async (path) => (await fetch(path ?? '')).text(), href);
    expect(text.trim().split('\r\n')).toHaveLength(5);
  });
});

describe('the office’s page', { timeout: 120_000 }, () => {
  it('tells where each job stands, what is due and who is waited for', async () => {
    await manager.goTo('/surveys');
    await manager.reads('Boat at 1');
    await manager.reads('Office: answer the enquiry');
    await manager.reads('Sela Quayle: say how the attendance went');
    await manager.reads('Attendance on');
    await manager.picture('lists-6-jobs');
    expect(await manager.widthAt360('lists-6-jobs')).toBeLessThanOrEqual(360);
    expect(await manager.text()).not.toContain('Boat at 7');
  });

  it('narrows by stage, by who is waited for and by words', async () => {
    await manager.choose('Stage', 'In clearance (3)');
    await manager.reads('3 surveys, soonest due first');
    await manager.goTo('/surveys');
    await manager.follow('All open');
    await manager.choose('Waiting for', 'Me');
    await manager.reads('Boat at 1');
    await manager.readsNoMore('Boat at 4');
    await manager.choose('Waiting for', 'Anybody');
    await manager.fill('Vessel or number', 'zzz', 'searchbox');
    await manager.reads('No survey matches');
  });
});

it('has met no error on the way', () => {
  expect(complaints).toEqual([]);
});
