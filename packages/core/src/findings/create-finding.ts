import type { Finding, findingCreate } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { attachPhotos } from './attach-photos.ts';
import { getFinding } from './get-finding.ts';
import { writableSurvey } from './writable-survey.ts';

const beforeDrafting = ['enquiry', 'booked', 'attended'];

/** Records a finding after the last one; the first makes the survey one that is being drafted. */
export async function createFinding(
  ctx: Ctx,
  input: { surveyId: string; finding: z.output<typeof findingCreate> },
): Promise<Finding> {
  const { survey, role } = await writableSurvey(ctx, input.surveyId);
  const { photoIds, position, ...fields } = input.finding;
  const last = await ctx.tx.finding.aggregate({ where: { surveyId: survey.id }, _max: { number: true } });
  const id = newId();
  const at = { firmId: survey.firmId, surveyId: survey.id };
  await ctx.tx.finding.create({
    data: { id, ...at, number: (last._max.number ?? 0) + 1, ...fields, position: position ?? Prisma.DbNull },
  });
  await attachPhotos(ctx, { ...at, findingId: id, photoIds });
  await ctx.tx.survey.update({
    where: { id: survey.id },
    data: {
      findingCount: { increment: 1 },
      ...(beforeDrafting.includes(survey.state) ? { state: 'drafting' } : {}),
    },
  });
  await recordEvent(ctx, {
    ...at,
    findingId: id,
    kind: 'finding.created',
    role,
    data: { title: fields.title },
  });
  return getFinding(ctx, id);
}
