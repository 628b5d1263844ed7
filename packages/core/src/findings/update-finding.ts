import type { Finding, findingPatch } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, staleVersion } from '../problems.ts';
import { attachPhotos } from './attach-photos.ts';
import { getFinding } from './get-finding.ts';
import { loadFinding } from './load-finding.ts';
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

/**
 * Edits the working copy of a finding. What was issued stays as it was until the next revision.
 *
 * @throws Refusal `stale-version` when `ifMatch` isn't the version on file
 */
export async function updateFinding(ctx: Ctx, { id, patch, ifMatch }: UpdateFinding): Promise<Finding> {
  const finding = await loadFinding(ctx, id);
  const { role } = await writableSurvey(ctx, finding.surveyId);
  const { photoIds, position, ...fields } = patch;
  const changed = await ctx.tx.finding.updateMany({
    where: { id, ...(ifMatch === undefined ? {} : { version: ifMatch }) },
    data: {
      ...fields,
      withinDays: daysAfter(patch, finding),
      ...(position === undefined ? {} : { position: position ?? Prisma.DbNull }),
      version: { increment: 1 },
    },
  });
  if (changed.count === 0) throw staleVersion('finding');
  const at = { firmId: finding.firmId, surveyId: finding.surveyId };
  if (photoIds) await attachPhotos(ctx, { ...at, findingId: id, photoIds });
  const title = patch.title ?? finding.title;
  await recordEvent(ctx, { ...at, findingId: id, kind: 'finding.edited', role, data: { title } });
  return getFinding(ctx, id);
}
