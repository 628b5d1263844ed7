import { Prisma } from '@garboard/db/database';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { wrongState } from '../problems.ts';
import { loadWorksheet } from './load-worksheet.ts';

/** Deletes a worksheet that the issued report doesn't show. @throws Refusal `wrong-state` */
export async function deleteWorksheet(ctx: Ctx, id: string): Promise<void> {
  const { firmId, surveyId, findingId, title } = await loadWorksheet(ctx, id);
  const { role } = await writableSurvey(ctx, surveyId, 'worksheet.write');
  const gone = await ctx.tx.worksheet.deleteMany({ where: { id, issued: { equals: Prisma.DbNull } } });
  if (gone.count === 0) {
    throw wrongState(
      'The issued report shows this worksheet, so it stays on record. Untick printing, and the next revision leaves it out.',
    );
  }
  await recordEvent(ctx, {
    firmId,
    surveyId,
    ...(findingId ? { findingId } : {}),
    kind: 'worksheet.deleted',
    role,
    data: { title },
  });
}
