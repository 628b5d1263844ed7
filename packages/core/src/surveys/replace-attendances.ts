import type { attendance } from '@garboard/contract/surveys';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';

/** Sets a survey's attendances, in this order. */
export async function replaceAttendances(
  ctx: Ctx,
  input: { firmId: string; surveyId: string; attendances: z.output<typeof attendance>[] },
): Promise<void> {
  await ctx.tx.attendance.deleteMany({ where: { surveyId: input.surveyId } });
  await ctx.tx.attendance.createMany({
    data: input.attendances.map((a, ordinal) => ({
      id: newId(),
      firmId: input.firmId,
      surveyId: input.surveyId,
      ordinal,
      date: new Date(`${a.date}T00:00:00Z`),
      place: a.place,
      condition: a.condition,
    })),
  });
}
