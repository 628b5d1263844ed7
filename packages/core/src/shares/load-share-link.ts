import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { shareRefusal } from './create-share-link.ts';

/** A share link of a survey that the actor sees and may share reports of. @throws Refusal `not-found`, `not-allowed` */
export async function loadShareLink(ctx: Ctx, shareLinkId: string) {
  const link = await ctx.tx.shareLink.findUnique({ where: { id: shareLinkId } });
  if (!link) throw notFound('share link');
  const survey = await loadSurvey(ctx, link.surveyId);
  const role = authorise(ctx.actor, survey, 'report.share', shareRefusal);
  return { link, role };
}
