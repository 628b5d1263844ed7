import type { Finding } from '@garboard/contract/findings';
import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import type { Prisma } from '@garboard/db/database';
import { itemsLeft } from '@garboard/trade/clearing';
import { dayIn } from '@garboard/trade/due-dates';
import {
  awaitsEvidence,
  decidedFindingStates,
  requiresClearing,
  surveyIsEditable,
} from '@garboard/trade/states';
import type { FindingState, Harm, SurveyState, System, Urgency } from '@garboard/trade/vocabulary';
import { isStaff, may, type Standing } from '../access/policy.ts';
import { dayOf } from '../clearance/extension-rows.ts';
import { type Item, issuedItems, presentItems, standingsOf } from '../clearance/items.ts';
import type { Ctx } from '../context.ts';
import { asIssued } from '../photos/issued-pictures.ts';
import { imageAddresses } from '../photos/present-photo.ts';
import { worksheetsOfFindings } from '../worksheets/worksheets-of-findings.ts';
import { costOf, gradingOf } from './cost-columns.ts';

export type FindingRow = Prisma.FindingGetPayload<{ include: { photos: true } }>;
export interface FindingSurvey extends Standing {
  state: string;
  timeZone: string;
  printCosts: boolean;
}

/** Words and photos that the caller sees: the working copy for the firm, what was issued for everyone else. */
function contentOf(row: FindingRow, staff: boolean) {
  const issued = staff ? null : (row.issued as SnapshotFinding | null);
  if (issued) {
    // Costs were not frozen before there were any.
    const cost = issued.cost ?? null;
    return { ...issued, cost, photoIds: issued.photos.map((p) => p.id), issuedPhotos: issued.photos };
  }
  const photoIds = [...row.photos].sort((a, b) => a.ordinal - b.ordinal).map((p) => p.photoId);
  return { ...row, cost: costOf(row), photoIds, issuedPhotos: null };
}

/** Presents findings of one survey; their photos come in one query for all, their worksheets in another. */
export async function presentFindings(
  ctx: Ctx,
  rows: FindingRow[],
  survey: FindingSurvey,
): Promise<Finding[]> {
  const staff = isStaff(ctx.actor, survey);
  const contents = rows.map((row) => ({ row, content: contentOf(row, staff) }));
  const ids = [...new Set(contents.flatMap((c) => c.content.photoIds))];
  const photos = await ctx.tx.photo.findMany({ where: { id: { in: ids } } });
  const shown = staff ? photos : await asIssued(ctx, photos);
  const byId = new Map(shown.map((p) => [p.id, p]));
  const surveyId = rows[0]?.surveyId ?? '';
  const findingIds = rows.map((row) => row.id);
  const worksheets = await worksheetsOfFindings(ctx, { surveyId, findingIds, staff });
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

  return contents.map(({ row, content }) => {
    const state = row.state as FindingState;
    const urgency = content.urgency as Urgency;
    const dueOn = row.dueOn?.toISOString().slice(0, 10) ?? null;
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
      dueOnSet: staff ? dayOf(row.dueOnSet) : null,
      items: presentItems(items, standings, state),
      itemsLeft: itemsLeft(
        items.map((item) => item.id),
        standings,
      ).length,
      limit: row.acceptedLimit === null ? null : { text: row.acceptedLimit, until: dayOf(row.acceptedUntil) },
      revision: row.issuedRevision,
      overdue: undecided && dueOn !== null && dueOn < today,
      requiresClearing: clearing,
      harms: content.harms as Harm[],
      references: content.references,
      photoIds: content.photoIds,
      photos: content.photoIds.flatMap((id) => {
        const photo = byId.get(id);
        if (!photo) return [];
        const { thumb, screen } = imageAddresses(photo);
        const issued = content.issuedPhotos?.find((p) => p.id === id);
        const { width, height } = photo;
        const takenAt = photo.takenAt?.toISOString() ?? null;
        return [
          {
            id,
            caption: issued?.caption ?? photo.caption,
            width,
            height,
            takenAt,
            images: { thumb, screen },
          },
        ];
      }),
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
