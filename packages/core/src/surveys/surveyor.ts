import type { Ctx } from '../context.ts';
import { invalidField } from '../problems.ts';

/** @throws Refusal `invalid-input` unless the person is a surveyor or principal of the firm. */
export async function mustSign(ctx: Ctx, firmId: string, personId: string): Promise<void> {
  const member = await ctx.tx.firmMember.findFirst({
    where: { firmId, personId, role: { in: ['principal', 'surveyor'] } },
  });
  if (!member)
    throw invalidField('/surveyorId', 'The signing surveyor must be a surveyor or principal of the firm.');
}
