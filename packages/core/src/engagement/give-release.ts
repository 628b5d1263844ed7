import { actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { releaseOf, type SurveyReleaseView } from './get-release.ts';
import { settleRelease } from './settle-release.ts';

/**
 * The principal's word: what was issued is handed over now, whatever the rule, paid for or not.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` when nothing is withheld
 */
export async function giveRelease(
  ctx: Ctx,
  { surveyId, reason }: { surveyId: string; reason: string },
): Promise<SurveyReleaseView> {
  await lockSurvey(ctx, surveyId);
  const survey = await loadSurvey(ctx, surveyId);
  const role = authorise(ctx.actor, survey, 'release.give', 'A principal of the firm gives this word.');
  if (!survey.held) throw wrongState('Nothing of this survey is withheld, so there is nothing to hand over.');
  const { firmId } = survey;
  await ctx.tx.surveyRelease.updateMany({
    where: { surveyId, wordAt: null },
    data: { wordAt: ctx.clock(), wordBy: actorName(ctx.actor), reason },
  });
  await recordEvent(ctx, { firmId, surveyId, kind: 'release.given', role, data: { reason } });
  await settleRelease(ctx, { firmId, surveyId, role });
  return releaseOf(ctx, await loadSurvey(ctx, surveyId));
}
