import { ownParties, visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';

/** A survey as the actor stands to it: with the actor's own party rows. @throws Refusal `not-found` */
export async function loadSurvey(ctx: Ctx, surveyId: string) {
  const survey = await ctx.tx.survey.findFirst({
    where: { AND: [{ id: surveyId }, visibleSurveys(ctx.actor)] },
    include: { parties: { where: ownParties(ctx.actor) } },
  });
  if (!survey) throw notFound('survey');
  return survey;
}

export type LoadedSurvey = Awaited<ReturnType<typeof loadSurvey>>;

/** Holds the survey's row until the transaction ends, so that counts, order and issuing can't interleave. */
export async function lockSurvey(ctx: Ctx, surveyId: string): Promise<void> {
  await ctx.tx.$queryRaw`SELECT id FROM surveys WHERE id = ${surveyId}::uuid FOR UPDATE`;
}
