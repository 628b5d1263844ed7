import type { Finding, findingPatch } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import { decidedFindingStates } from '@garboard/trade/states';
import type { FindingState } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId } from '../access/actor.ts';
import { startedFrom } from '../catalogue/started-from.ts';
import type { Item } from '../clearance/items.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, staleVersion, wrongState } from '../problems.ts';
import { attachPhotos } from './attach-photos.ts';
import { dueByHandColumns, itemColumns } from './clearing-columns.ts';
import { costColumns, gradingColumns } from './cost-columns.ts';
import { getFinding } from './get-finding.ts';
import { type LoadedFinding, loadFinding } from './load-finding.ts';
import { writableSurvey } from './writable-survey.ts';

export interface UpdateFinding {
  id: string;
  patch: z.output<typeof findingPatch>;
  ifMatch?: number | undefined;
}

/** The number of days that goes with the urgency after this edit. */
function daysAfter(
  patch: UpdateFinding['patch'],
  now: { urgency: string; withinDays: number | null },
): number | null {
  const urgency = patch.urgency ?? now.urgency;
  if (urgency !== 'within-days') {
    if (patch.withinDays != null) {
      throw invalidField('/withinDays', 'A number of days goes only with urgency within-days.');
    }
    return null;
  }
  const days = patch.withinDays === undefined ? now.withinDays : patch.withinDays;
  if (days === null) throw invalidField('/withinDays', 'State within how many days it must be put right.');
  return days;
}

/** The entry that the finding began from, after this edit; one it has already isn't asked for again. */
async function originAfter(ctx: Ctx, patch: UpdateFinding['patch'], now: LoadedFinding) {
  if (patch.catalogueKey === undefined && patch.catalogueVersion === undefined) return {};
  const key = patch.catalogueKey === undefined ? now.catalogueKey : patch.catalogueKey;
  const same = key === now.catalogueKey;
  const version = patch.catalogueVersion ?? (same && key !== null ? now.catalogueVersion : null);
  if (same && version === now.catalogueVersion) return {};
  const catalogueVersion = await startedFrom(ctx, { firmId: now.firmId, key, version });
  return { catalogueKey: key, catalogueVersion };
}

/** A finding that is decided keeps the items that were decided on. */
function refuseItemsOfDecided(
  { state, items }: LoadedFinding,
  after: readonly { id?: string | undefined; text: string }[],
): void {
  if (!decidedFindingStates.includes(state as FindingState)) return;
  const before = (items as unknown as Item[]).map(({ id, text }) => `${id} ${text}`);
  if (before.join('\n') === after.map(({ id, text }) => `${id} ${text}`).join('\n')) return;
  throw wrongState('This finding is decided and keeps its items. Record a new finding for what is left.');
}

/** Writing that is saved as it is typed makes one line in the history, not hundreds. */
const oneSittingMs = 15 * 60_000;

async function editedJustNow(ctx: Ctx, findingId: string): Promise<boolean> {
  const latest = await ctx.tx.event.findFirst({
    where: { findingId },
    orderBy: { id: 'desc' },
    select: { kind: true, actorId: true, at: true },
  });
  if (!latest || latest.actorId !== actorId(ctx.actor)) return false;
  const recent = ctx.clock().getTime() - latest.at.getTime() < oneSittingMs;
  return recent && (latest.kind === 'finding.edited' || latest.kind === 'finding.created');
}

/**
 * Edits the working copy of a finding. What was issued stays as it was until the next revision.
 *
 * @throws Refusal `stale-version` when `ifMatch` isn't the version on file
 */
export async function updateFinding(ctx: Ctx, { id, patch, ifMatch }: UpdateFinding): Promise<Finding> {
  const finding = await loadFinding(ctx, id);
  const { role, survey } = await writableSurvey(ctx, finding.surveyId);
  if (finding.state === 'withdrawn') {
    throw wrongState('This finding is withdrawn and stays as it was issued. Record a new one instead.');
  }
  const { photoIds, position, cost, grading, catalogueKey, catalogueVersion, items, dueOnSet, ...fields } =
    patch;
  if (items) refuseItemsOfDecided(finding, items);
  const at = { firmId: finding.firmId, surveyId: finding.surveyId };
  const origin = await originAfter(ctx, patch, finding);
  const changed = await ctx.tx.finding.updateMany({
    where: { id, ...(ifMatch === undefined ? {} : { version: ifMatch }) },
    data: {
      ...fields,
      ...origin,
      ...costColumns(cost),
      ...gradingColumns(grading),
      ...itemColumns(items),
      ...dueByHandColumns({
        ...{ dueOnSet, urgency: patch.urgency ?? finding.urgency, now: ctx.clock() },
        ...{ issuedAt: finding.state === 'draft' ? null : survey.issuedAt, timeZone: survey.timeZone },
      }),
      withinDays: daysAfter(patch, finding),
      ...(position === undefined ? {} : { position: position ?? Prisma.DbNull }),
      version: { increment: 1 },
    },
  });
  if (changed.count === 0) throw staleVersion('finding');
  if (photoIds) await attachPhotos(ctx, { ...at, findingId: id, photoIds });
  const title = patch.title ?? finding.title;
  if (!(await editedJustNow(ctx, id))) {
    await recordEvent(ctx, { ...at, findingId: id, kind: 'finding.edited', role, data: { title } });
  }
  return getFinding(ctx, id);
}
