import type { Ctx } from '../context.ts';
import { invalidField } from '../problems.ts';

/** Sets a finding's photos, in this order. @throws Refusal `invalid-input` for a photo of another survey. */
export async function attachPhotos(
  ctx: Ctx,
  input: { firmId: string; surveyId: string; findingId: string; photoIds: readonly string[] },
): Promise<void> {
  const wanted = [...new Set(input.photoIds)];
  const found = await ctx.tx.photo.count({ where: { id: { in: wanted }, surveyId: input.surveyId } });
  if (found !== wanted.length) {
    throw invalidField('/photoIds', 'A finding can only show photos uploaded to its own survey.');
  }
  await ctx.tx.findingPhoto.deleteMany({ where: { findingId: input.findingId } });
  await ctx.tx.findingPhoto.createMany({
    data: wanted.map((photoId, ordinal) => ({
      firmId: input.firmId,
      findingId: input.findingId,
      photoId,
      ordinal,
    })),
  });
}
