import type { Finding } from '@garboard/contract/findings';
import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { itemsLeft } from '@garboard/trade/clearing';
import { dayIn } from '@garboard/trade/due-dates';
import {
  awaitsEvidence,
  decidedFindingStates,
  requiresClearing,
  surveyIsEditable,
} from '@garboard/trade/states';
import type {
  ClearanceState,
  FindingState,
  Harm,
  SurveyState,
  System,
  Urgency,
} from '@garboard/trade/vocabulary';
import { may } from '../access/policy.ts';
import { type Item, issuedItems, presentItems, standingsOf } from '../clearance/items.ts';
import type { ReadCtx } from '../context.ts';
import { imageAddresses } from '../photos/present-photo.ts';
import { costOf, gradingOf } from './cost-columns.ts';
import type { FindingRow, ReadFindings } from './read-findings.ts';

/** Words and photos that the caller sees: the working copy for the firm, what was issued for everyone else. */
function contentOf(row: FindingRow, staff: boolean) {
  const issued = staff ? null : (row.issued as SnapshotFinding | null);
  // Costs were not frozen before there were any.
  if (issued) return { ...issued, cost: issued.cost ?? null, issuedPhotos: issued.photos };
  return { ...row, cost: costOf(row), issuedPhotos: null };
}

/** Presents findings of one survey. */
export function presentFindings(
  ctx: ReadCtx,
  { survey, staff, rows, photos, worksheets }: ReadFindings,
): Finding[] {
  const today = dayIn(survey.timeZone, ctx.clock());
  const writes = may(ctx.actor, survey, 'finding.write') && surveyIsEditable(survey.state as SurveyState);
  const withdraws =
    may(ctx.actor, survey, 'finding.withdraw') && surveyIsEditable(survey.state as SurveyState);
  const sends = may(ctx.actor, survey, 'evidence.send');
  const decides = may(ctx.actor, survey, 'evidence.decide');
  const extendsTime = may(ctx.actor, survey, 'finding.extend');
  const reInspects =
    may(ctx.actor, survey, 'finding.re-inspect') && surveyIsEditable(survey.state as SurveyState);
  const comments = may(ctx.actor, survey, 'comment.write');
  const costsShown = staff || (survey.printCosts && may(ctx.actor, survey, 'report.read'));

  const seesEvidence = may(ctx.actor, survey, 'evidence.read');

  return rows.map((row) => {
    const content = contentOf(row, staff);
    const shown = photos.get(row.id) ?? [];
    const state = row.state as FindingState;
    const urgency = content.urgency as Urgency;
    const { dueOn } = row;
    const clearing = state === 'draft' ? requiresClearing(urgency, false) : row.clearing;
    const items = staff ? (row.items as unknown as Item[]) : issuedItems(row);
    const standings = standingsOf(row);
    const undecided = clearing && !decidedFindingStates.includes(state);
    return {
      id: row.id,
      surveyId: row.surveyId,
      number: row.number,
      state,
      system: content.system as System,
      title: content.title,
      observed: content.observed,
      consequence: content.consequence,
      recommendation: content.recommendation,
      urgency,
      withinDays: content.withinDays,
      dueOn,
      dueOnSet: staff ? row.dueOnSet : null,
      items: presentItems(items, standings, state),
      itemsLeft: itemsLeft(
        items.map((item) => item.id),
        standings,
      ).length,
      limit: row.acceptedLimit === null ? null : { text: row.acceptedLimit, until: row.acceptedUntil },
      revision: row.issuedRevision,
      overdue: undecided && dueOn !== null && dueOn < today,
      requiresClearing: clearing,
      harms: content.harms as Harm[],
      references: content.references,
      photoIds: content.issuedPhotos?.map((photo) => photo.id) ?? shown.map((photo) => photo.id),
      photos: shown.map((photo) => {
        const { thumb, screen } = imageAddresses(photo);
        const issued = content.issuedPhotos?.find((p) => p.id === photo.id);
        const { id, width, height } = photo;
        const takenAt = photo.takenAt?.toISOString() ?? null;
        return {
          id,
          caption: issued?.caption ?? photo.caption,
          width,
          height,
          takenAt,
          images: { thumb, screen },
        };
      }),
      latestClearance: seesEvidence ? latestOf(row) : null,
      worksheets: worksheets.get(row.id) ?? [],
      catalogueKey: row.catalogueKey,
      catalogueVersion: row.catalogueVersion,
      cost: costsShown ? content.cost : null,
      grading: staff ? gradingOf(row) : null,
      position: row.position as Finding['position'],
      withdrawal:
        row.withdrawnReason !== null && row.withdrawnAt
          ? { reason: row.withdrawnReason, at: row.withdrawnAt.toISOString(), by: row.withdrawnBy ?? '' }
          : null,
      may: {
        edit: writes && state !== 'withdrawn',
        sendEvidence: sends && clearing && awaitsEvidence.includes(state),
        decide: decides && state === 'evidence-sent',
        withdraw: withdraws && state !== 'draft' && !decidedFindingStates.includes(state),
        extend: extendsTime && state !== 'draft' && undecided,
        reInspect: reInspects && state !== 'draft' && undecided,
        comment: comments && state !== 'draft',
      },
      createdAt: row.createdAt.toISOString(),
      updatedAt: row.updatedAt.toISOString(),
      version: row.version,
    };
  });
}

function latestOf(row: FindingRow): Finding['latestClearance'] {
  const { latestId: id, latestState, latestSentAt, latestDecidedAt } = row;
  if (id === null || latestSentAt === null) return null;
  const state = latestState as ClearanceState;
  return { id, state, sentAt: latestSentAt.toISOString(), decidedAt: latestDecidedAt?.toISOString() ?? null };
}
