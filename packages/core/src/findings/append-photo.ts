import type { Ctx } from '../context.ts';

/**
 * Adds a photo at the end of a finding's; does nothing when the finding is no longer there or shows it already. Raises
 * the finding's version, as its photos are part of it.
 */
export async function appendPhoto(
  ctx: Ctx,
  { surveyId, findingId, photoId }: { surveyId: string; findingId: string; photoId: string },
): Promise<void> {
  const raised = await ctx.tx.finding.updateManyAndReturn({
    where: { id: findingId, surveyId, photos: { none: { photoId } } },
    data: { version: { increment: 1 } },
    select: { firmId: true },
  });
  const [finding] = raised;
  if (!finding) return;
  const last = await ctx.tx.findingPhoto.aggregate({ where: { findingId }, _max: { ordinal: true } });
  const ordinal = (last._max.ordinal ?? -1) + 1;
  await ctx.tx.findingPhoto.create({ data: { firmId: finding.firmId, findingId, photoId, ordinal } });
}
