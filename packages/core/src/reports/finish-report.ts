import {
  type ReportSnapshot,
  reportSnapshot,
  type SnapshotFinding,
} from '@garboard/contract/report-snapshot';
import { type ItemStandings, itemsLeft } from '@garboard/trade/clearing';
import { requiresClearing, surveyMayBeIssued } from '@garboard/trade/states';
import { type FindingState, reportKindLabels, type SurveyState } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import { holdWhenIssued } from '../engagement/settle-release.ts';
import { recordEvents } from '../events/record-event.ts';
import { lockSurvey } from '../surveys/load-survey.ts';
import { issueWorksheets } from '../worksheets/freeze-worksheets.ts';
import { keepMissingPictures } from './keep-pictures.ts';
import { requesterOf } from './requester.ts';

export interface FinishReport {
  reportId: string;
  claim: string;
  sha256: string;
  pages: number;
  bytes: number;
  /** What made the pages, with versions. */
  renderer: string;
  /** Whom the certificate names that signed the file. */
  signedBy: string;
}

/**
 * Issues a report whose PDF is in the store. The full report also opens its draft findings, freezes what parties
 * read of each and of its worksheets, and moves the survey to `issued`.
 *
 * @returns false when another attempt has taken it over, or it was issued already: nothing was changed.
 */
export async function finishReport(ctx: Ctx, input: FinishReport): Promise<boolean> {
  const { reportId, claim, sha256, pages, bytes, renderer, signedBy } = input;
  const owner = await ctx.tx.report.findUnique({ where: { id: reportId }, select: { surveyId: true } });
  if (!owner) return false;
  // The survey before the report, as everywhere, so that no two transactions wait for each other.
  await lockSurvey(ctx, owner.surveyId);
  const now = ctx.clock();
  const mine = await ctx.tx.report.updateMany({
    where: { id: reportId, claim, state: 'rendering' },
    data: {
      state: 'issued',
      progress: 100,
      stage: 'Issued',
      problem: null,
      issuedAt: now,
      sha256,
      pages,
      bytes,
      renderer,
      signedBy,
    },
  });
  if (mine.count === 0) return false;
  await keepMissingPictures(ctx, reportId);
  const report = await ctx.tx.report.findUniqueOrThrow({ where: { id: reportId } });
  const snapshot = reportSnapshot.parse(report.snapshot);
  const opened = snapshot.kind === 'full' ? await openFindings(ctx, report.surveyId, snapshot) : [];
  if (snapshot.kind === 'full') {
    await issueWorksheets(ctx, report.surveyId, snapshot);
    await moveSurvey(ctx, report.surveyId, now);
  }

  const { firmId, surveyId } = report;
  const { kind, revision } = snapshot;
  const issued = { kind, label: reportKindLabels[kind], revision };
  const requester = await requesterOf(ctx, report);
  const shared = { firmId, surveyId, reportId, ...requester };
  // Before anybody is told: what is withheld is told of when it is handed over.
  await holdWhenIssued(ctx, { firmId, surveyId, ...requester });
  await recordEvents(ctx, [
    { ...shared, kind: 'report.issued', data: issued },
    ...opened.map((f) => ({
      ...shared,
      findingId: f.id,
      kind: 'finding.issued' as const,
      data: { title: f.title, dueOn: f.dueOn },
    })),
  ]);
  return true;
}

/** Writes what was issued into every finding of the report, in one statement. Answers those that were drafts. */
async function openFindings(ctx: Ctx, surveyId: string, snapshot: ReportSnapshot) {
  const standing = await ctx.tx.$queryRaw<StandingRow[]>`
    SELECT id, state, due_on::text AS "dueOn", due_extended_at AS "dueExtendedAt", item_states AS "itemStates"
      FROM findings WHERE survey_id = ${surveyId}::uuid ORDER BY id FOR UPDATE`;
  const now = new Map(standing.map((row) => [row.id, row]));
  const { firm } = await ctx.tx.survey.findUniqueOrThrow({
    where: { id: surveyId },
    select: { firm: { select: { layupRequiresClearing: true } } },
  });
  const rows = snapshot.findings.map((f) => ({
    id: f.id,
    issued: f,
    due_on: dueAfter(f, snapshot, now.get(f.id)),
    state: stateAfter(f, now.get(f.id)),
    clearing: requiresClearing(f.urgency, firm.layupRequiresClearing),
  }));
  await ctx.tx.$executeRaw`
    UPDATE findings AS f
    SET issued = r.issued, due_on = r.due_on, clearing = r.clearing, version = f.version + 1,
        updated_at = ${ctx.clock()},
        state = coalesce(r.state, f.state), issued_revision = ${snapshot.revision}
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS r(id uuid, issued jsonb, due_on date, state text, clearing boolean)
    WHERE f.id = r.id AND f.survey_id = ${surveyId}::uuid`;
  return snapshot.findings.filter((f) => now.get(f.id)?.state === 'draft');
}

interface StandingRow {
  id: string;
  state: string;
  dueOn: string | null;
  dueExtendedAt: Date | null;
  itemStates: ItemStandings;
}

/** The day that was frozen, unless more time was given while the document was being made. */
function dueAfter({ dueOn }: SnapshotFinding, { frozenAt }: ReportSnapshot, now: StandingRow | undefined) {
  return now?.dueExtendedAt && now.dueExtendedAt > new Date(frozenAt) ? now.dueOn : dueOn;
}

/** A draft is opened. So is one that was decided on while the document that gives it more items was being made. */
function stateAfter({ items }: SnapshotFinding, now: StandingRow | undefined): FindingState | null {
  if (!now) return null;
  if (now.state === 'draft') return 'open';
  const decided = now.state === 'cleared' || now.state === 'accepted-as-is';
  const ids = items.map((item) => item.id);
  const settledOnes = ids.length - itemsLeft(ids, now.itemStates).length;
  // One that was decided as a whole, before it had items, stays decided.
  return decided && settledOnes > 0 && settledOnes < ids.length ? 'open' : null;
}

async function moveSurvey(ctx: Ctx, surveyId: string, now: Date): Promise<void> {
  const survey = await ctx.tx.survey.findUniqueOrThrow({
    where: { id: surveyId },
    select: { state: true, issuedAt: true },
  });
  // One that was closed or cancelled while the report was being made stays where it was put.
  const moves = surveyMayBeIssued(survey.state as SurveyState);
  await ctx.tx.survey.update({
    where: { id: surveyId },
    data: {
      ...(moves ? { state: 'issued' } : {}),
      issuedAt: survey.issuedAt ?? now,
      version: { increment: 1 },
    },
  });
}
