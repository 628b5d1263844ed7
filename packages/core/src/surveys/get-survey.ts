import type { Survey } from '@garboard/contract/surveys';
import { visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { presentSurveys } from './count-issued.ts';
import { surveyInclude } from './present-survey.ts';

/** A survey the actor may see. @throws Refusal `not-found` */
export async function getSurvey(ctx: Ctx, id: string): Promise<Survey> {
  const row = await ctx.tx.survey.findFirst({
    where: { AND: [{ id }, visibleSurveys(ctx.actor)] },
    include: surveyInclude(ctx.actor),
  });
  if (!row) throw notFound('survey');
  const [survey] = await presentSurveys(ctx, [row]);
  if (!survey) throw notFound('survey');
  return survey;
}
