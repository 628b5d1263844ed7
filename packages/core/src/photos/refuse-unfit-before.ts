import type { Ctx } from '../context.ts';
import { invalidField } from '../problems.ts';

interface Later {
  id: string;
  firmId: string;
  survey: { vesselId: string; createdAt: Date };
}

/**
 * Makes sure that a photo can stand before another: of the same boat, by the same firm, of the same survey or an
 * earlier one, and not already its later half.
 *
 * @throws Refusal `invalid-input`
 */
export async function refuseUnfitBefore(ctx: Ctx, later: Later, beforePhotoId: string): Promise<void> {
  const refuse = (detail: string) => invalidField('/beforePhotoId', detail);
  if (beforePhotoId === later.id) throw refuse('A photo can’t be its own earlier photo; choose another.');
  const before = await ctx.tx.photo.findFirst({
    where: { id: beforePhotoId, firmId: later.firmId, survey: { vesselId: later.survey.vesselId } },
    select: { beforePhotoId: true, survey: { select: { createdAt: true } } },
  });
  if (!before)
    throw refuse('There is no such photo of this boat. Choose one of this survey or an earlier one.');
  if (before.survey.createdAt > later.survey.createdAt) {
    throw refuse('That photo is of a later survey. Choose one of this survey or an earlier one.');
  }
  if (before.beforePhotoId === later.id) {
    throw refuse('These two are a pair already, the other way round. Part them first.');
  }
}
