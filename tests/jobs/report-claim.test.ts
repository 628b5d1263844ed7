import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { requeueLost } from '@garboard/core/outbox/requeue-lost';
import { claimReport } from '@garboard/core/reports/claim-report';
import { failReport } from '@garboard/core/reports/fail-report';
import { finishReport } from '@garboard/core/reports/finish-report';
import { getReportData } from '@garboard/core/reports/get-report-data';
import { listReports } from '@garboard/core/reports/list-reports';
import { reportProgress } from '@garboard/core/reports/report-progress';
import { requestReport } from '@garboard/core/reports/request-report';
import { retryReport } from '@garboard/core/reports/retry-report';
import { openDatabase } from '@garboard/db/database';
import { openObjectStore } from '@garboard/platform/object-store';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { freshDatabase } from '../support/database.ts';
import { type Acting, asStaff, asWorker, publicUrl, type SurveyRows, writeSurvey } from './survey-rows.ts';

let now = new Date('2026-05-06T20:00:00Z');
let acting: Acting;
let close: () => Promise<void>;
const pdf = {
  ...{ sha256: 'ab'.repeat(32), pages: 9, bytes: 1234 },
  ...{ renderer: 'Garboard 0.1.0', signedBy: 'Tallow & Strake' },
};

beforeAll(async () => {
  const database = await freshDatabase();
  const folder = await mkdtemp(join(tmpdir(), 'garboard-claim-'));
  const store = await openObjectStore(pathToFileURL(folder).href, folder);
  const db = openDatabase(database.url, 6);
  acting = { db, store, clock: () => now };
  close = async () => {
    await db.close();
    await database.drop();
    await rm(folder, { recursive: true });
  };
});
afterAll(() => close());

const request = (rows: SurveyRows, kind: Parameters<typeof requestReport>[1]['kind'] = 'full') =>
  asStaff(acting, rows, (ctx) => requestReport(ctx, { surveyId: rows.surveyId, kind, publicUrl }));
const claim = async (rows: SurveyRows, reportId: string) => {
  const claimed = await asWorker(acting, rows.firmId, (ctx) => claimReport(ctx, reportId));
  if (!claimed) throw new Error('The report could not be claimed.');
  return claimed.claim;
};
const finish = (rows: SurveyRows, reportId: string, mine: string) =>
  asWorker(acting, rows.firmId, (ctx) => finishReport(ctx, { reportId, claim: mine, ...pdf }));
const issue = async (rows: SurveyRows, kind: Parameters<typeof requestReport>[1]['kind'] = 'full') => {
  const report = await request(rows, kind);
  expect(await finish(rows, report.id, await claim(rows, report.id))).toBe(true);
  return report;
};
const read = <T>(rows: SurveyRows, work: Parameters<typeof asWorker<T>>[2]) =>
  asWorker(acting, rows.firmId, work);

describe('claiming', () => {
  test('a second attempt takes over, and the first can no longer report, finish or fail', async () => {
    const rows = await writeSurvey(acting.db, 2);
    const { id: reportId } = await request(rows);
    const first = await claim(rows, reportId);
    const second = await claim(rows, reportId);
    const step = { reportId, progress: 40, stage: 'Printing' };
    expect(await read(rows, (ctx) => reportProgress(ctx, { ...step, claim: first }))).toBe(false);
    expect(await finish(rows, reportId, first)).toBe(false);
    expect(await read(rows, (ctx) => failReport(ctx, { reportId, claim: first, problem: 'x' }))).toBe(false);
    expect(await read(rows, (ctx) => reportProgress(ctx, { ...step, claim: second }))).toBe(true);
    expect(await finish(rows, reportId, second)).toBe(true);
    expect(await finish(rows, reportId, second)).toBe(false);
    expect(await read(rows, (ctx) => claimReport(ctx, reportId))).toBeNull();
    const issued = await read(rows, (ctx) =>
      ctx.tx.event.count({ where: { reportId, kind: 'report.issued' } }),
    );
    expect(issued).toBe(1);
  });

  test('two people who ask at once get one report and one refusal', async () => {
    const rows = await writeSurvey(acting.db, 1);
    const answers = await Promise.allSettled([request(rows), request(rows)]);
    expect(answers.map((a) => a.status).sort()).toEqual(['fulfilled', 'rejected']);
    const refused = answers.find((a) => a.status === 'rejected');
    expect(refused?.reason).toMatchObject({ type: 'wrong-state' });
  });
});

describe('issuing', () => {
  test('opens drafts with a due date in the survey’s time zone and freezes what parties read', async () => {
    now = new Date('2026-05-06T20:00:00Z');
    const rows = await writeSurvey(acting.db, 3);
    const report = await issue(rows);
    const findings = await read(rows, (ctx) =>
      ctx.tx.finding.findMany({ where: { surveyId: rows.surveyId }, orderBy: { number: 'asc' } }),
    );
    // It is 7 May in Auckland.
    expect(findings.map((f) => [f.state, f.clearing, f.dueOn?.toISOString().slice(0, 10)])).toEqual([
      ['open', true, '2026-06-06'],
      ['open', false, undefined],
      ['open', true, '2026-06-06'],
    ]);
    expect(findings[0]?.issued).toMatchObject({
      title: 'Hardened hose 1',
      dueOn: '2026-06-06',
      state: 'open',
    });
    const survey = await read(rows, (ctx) =>
      ctx.tx.survey.findUniqueOrThrow({ where: { id: rows.surveyId } }),
    );
    expect(survey).toMatchObject({ state: 'issued', issuedAt: now });
    const events = await read(rows, (ctx) =>
      ctx.tx.event.findMany({ where: { surveyId: rows.surveyId, kind: 'finding.issued' } }),
    );
    expect(events).toHaveLength(3);
    expect(events[0]).toMatchObject({ actorName: 'Ines Quorn', actorRole: 'surveyor' });
    const data = await asStaff(acting, rows, (ctx) => getReportData(ctx, report.id));
    expect(JSON.stringify(data)).not.toMatch(/latitude|longitude|gps/i);
  });

  test('a later revision supersedes, keeps a running time limit and the state of what was cleared', async () => {
    now = new Date('2026-05-06T20:00:00Z');
    const rows = await writeSurvey(acting.db, 3);
    await issue(rows);
    now = new Date('2026-05-20T08:00:00Z');
    const [first, , third] = rows.findingIds;
    await read(rows, async (ctx) => {
      await ctx.tx.finding.update({
        where: { id: first },
        data: { state: 'cleared', observed: 'Worded anew.' },
      });
      await ctx.tx.finding.update({ where: { id: third }, data: { withinDays: 10 } });
    });
    await issue(rows);
    const findings = await read(rows, (ctx) =>
      ctx.tx.finding.findMany({ where: { surveyId: rows.surveyId }, orderBy: { number: 'asc' } }),
    );
    expect(findings.map((f) => f.state)).toEqual(['cleared', 'open', 'open']);
    expect(findings[0]).toMatchObject({
      issued: { observed: 'Worded anew.' },
      dueOn: new Date('2026-06-06'),
    });
    expect(findings[2]?.dueOn).toEqual(new Date('2026-05-30'));
    const list = await asStaff(acting, rows, (ctx) =>
      listReports(ctx, { surveyId: rows.surveyId, limit: 10 }),
    );
    expect(list.items.map((r) => [r.revision, r.superseded])).toEqual([
      [2, false],
      [1, true],
    ]);
  });

  test('a clearance letter waits until everything that requires clearing is decided', async () => {
    const rows = await writeSurvey(acting.db, 3);
    await expect(request(rows, 'status-letter')).rejects.toMatchObject({ type: 'wrong-state' });
    await issue(rows);
    await expect(request(rows, 'clearance-letter')).rejects.toThrow(/^2 findings .*status letter/s);
    await issue(rows, 'status-letter');
    await issue(rows, 'recommendations');
    await read(rows, (ctx) =>
      ctx.tx.finding.updateMany({
        where: { surveyId: rows.surveyId, clearing: true },
        data: { state: 'cleared' },
      }),
    );
    const letter = await issue(rows, 'clearance-letter');
    const data = await asStaff(acting, rows, (ctx) => getReportData(ctx, letter.id));
    expect(data.findings.map((f) => [f.number, f.state])).toEqual([
      [1, 'cleared'],
      [3, 'cleared'],
    ]);
  });
});

describe('refusals', () => {
  test('a finding without a recommendation is named by its number', async () => {
    const rows = await writeSurvey(acting.db, 2);
    await read(rows, (ctx) =>
      ctx.tx.finding.update({ where: { id: rows.findingIds[1] }, data: { recommendation: ' ' } }),
    );
    await expect(request(rows)).rejects.toThrow(/^Finding 2 /);
  });

  test('office staff may not issue', async () => {
    const rows = await writeSurvey(acting.db, 1);
    const asked = asStaff(
      acting,
      rows,
      (ctx) => requestReport(ctx, { surveyId: rows.surveyId, kind: 'full', publicUrl }),
      'office',
    );
    await expect(asked).rejects.toMatchObject({ type: 'not-allowed' });
  });
});

describe('failing', () => {
  test('a failed report can be tried again and keeps its revision', async () => {
    const rows = await writeSurvey(acting.db, 1);
    const { id: reportId } = await request(rows);
    const mine = await claim(rows, reportId);
    await read(rows, (ctx) =>
      failReport(ctx, { reportId, claim: mine, problem: 'The photo could not be read.' }),
    );
    expect(await read(rows, (ctx) => claimReport(ctx, reportId))).toBeNull();
    const again = await asStaff(acting, rows, (ctx) => retryReport(ctx, reportId));
    expect(again).toMatchObject({ state: 'queued', revision: 1, problem: null });
    expect(await finish(rows, reportId, await claim(rows, reportId))).toBe(true);
    await expect(asStaff(acting, rows, (ctx) => retryReport(ctx, reportId))).rejects.toMatchObject({
      type: 'wrong-state',
    });
  });

  test('a report without a sign of life is asked for again, once', async () => {
    now = new Date('2026-05-06T20:00:00Z');
    const rows = await writeSurvey(acting.db, 1);
    const { id: reportId } = await request(rows);
    await claim(rows, reportId);
    const later = (minutes: number) => new Date(now.getTime() + minutes * 60_000);
    const sweep = (minutes: number) => read(rows, (ctx) => requeueLost(ctx.tx, later(minutes)));
    expect((await sweep(2)).reports).toBe(0);
    expect((await sweep(4)).reports).toBe(1);
    expect((await sweep(5)).reports).toBe(0);
  });
});
