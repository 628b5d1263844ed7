import { claimReport } from '@garboard/core/reports/claim-report';
import { failReport } from '@garboard/core/reports/fail-report';
import { finishReport } from '@garboard/core/reports/finish-report';
import { listReports } from '@garboard/core/reports/list-reports';
import { requestReport } from '@garboard/core/reports/request-report';
import { retryReport } from '@garboard/core/reports/retry-report';
import { buildFirm } from '@garboard/seed/builders';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  type Acting,
  asStaff,
  asWorker,
  publicUrl,
  type SurveyRows,
  writeSurvey,
} from '../jobs/survey-rows.ts';
import { startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let acting: Acting;
beforeAll(async () => {
  server = await startServer();
  acting = { db: server.db, store: server.store, clock: () => new Date() };
});
afterAll(() => server.close());

test('surveys of a firm are numbered without gaps while many are opened at once and some are refused', async () => {
  const firms = await Promise.all([1, 2].map(() => buildFirm(server.db, ['surveyor'])));
  const numbers = await Promise.all(
    firms.map(async (firm) => {
      const surveyor = server.as(firm.surveyor);
      const vessel = await surveyor.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
      const open = (body: object) =>
        surveyor.post('/v1/surveys').send({ vesselId: vessel.body.id, purpose: 'condition', ...body });
      const good = Array.from({ length: 20 }, () => open({}));
      // Refused before and after a number was taken: a foreign surveyor, an unknown vessel, the same key at once.
      const bad = Array.from({ length: 6 }, (_, n) =>
        n % 2 ? open({ surveyorId: firms[0]?.id }) : open({ vesselId: firm.id }),
      );
      const same = Array.from({ length: 4 }, () => open({}).set('idempotency-key', 'once'));
      const answers = await Promise.all([...good, ...bad, ...same]);
      expect(answers.slice(20, 26).every((a) => a.status === 422)).toBe(true);
      return [...new Set(answers.flatMap((a) => (a.status === 201 ? [a.body.number as string] : [])))].sort();
    }),
  );
  for (const given of numbers) {
    const year = given[0]?.slice(0, 4);
    expect(given).toEqual(given.map((_, n) => `${year}-${String(n + 1).padStart(4, '0')}`));
    expect(given.length).toBe(21);
  }
});

const request = (rows: SurveyRows) =>
  asStaff(acting, rows, (ctx) => requestReport(ctx, { surveyId: rows.surveyId, kind: 'full', publicUrl }));
const claim = async (rows: SurveyRows, reportId: string) => {
  const claimed = await asWorker(acting, rows.firmId, (ctx) => claimReport(ctx, reportId));
  if (!claimed) throw new Error('could not be claimed');
  return { claim: claimed.claim, snapshot: claimed.snapshot };
};
const pdf = { pages: 9, bytes: 1234, renderer: 'Garboard', signedBy: 'Tallow & Strake' };

test('revisions are issued without gaps, whatever fails in between and however many ask', async () => {
  const rows = await writeSurvey(acting.db, 2);
  const expected = [1, 2, 3];
  const failed: string[] = [];
  for (const revision of expected) {
    // Many ask at once; one is made, and fails.
    const asked = await Promise.allSettled(Array.from({ length: 6 }, () => request(rows)));
    const taken = asked.flatMap((a) => (a.status === 'fulfilled' ? [a.value] : []));
    expect(taken.map((r) => r.revision)).toEqual([revision]);
    for (const a of asked) {
      if (a.status === 'rejected') expect(a.reason).toMatchObject({ type: 'wrong-state' });
    }
    const first = taken[0];
    if (!first) throw new Error('nothing was taken');
    failed.push(first.id);
    const mine = await claim(rows, first.id);
    const problem = 'The browser crashed.';
    await asWorker(acting, rows.firmId, (ctx) =>
      failReport(ctx, { reportId: first.id, claim: mine.claim, problem }),
    );
    // Asked for anew, as another document: it has the same number, and the one that failed has none any more.
    const again = await request(rows);
    expect(again.revision).toBe(revision);
    await expect(asStaff(acting, rows, (ctx) => retryReport(ctx, first.id))).rejects.toMatchObject({
      type: 'wrong-state',
    });
    const { claim: held, snapshot } = await claim(rows, again.id);
    expect(snapshot.revision).toBe(revision);
    expect(snapshot.revisions.map((r) => r.revision)).toEqual(expected.slice(0, revision));
    const sha256 = String(revision).repeat(64);
    const done = { reportId: again.id, claim: held, sha256, ...pdf };
    expect(await asWorker(acting, rows.firmId, (ctx) => finishReport(ctx, done))).toBe(true);
  }
  const { items } = await asStaff(acting, rows, (ctx) =>
    listReports(ctx, { surveyId: rows.surveyId, limit: 50 }),
  );
  const issued = items.filter((r) => r.state === 'issued').map((r) => r.revision);
  expect(issued).toEqual([3, 2, 1]);
  expect(items.filter((r) => failed.includes(r.id)).map((r) => r.revision)).toEqual([null, null, null]);
});
