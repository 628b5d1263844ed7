import { surveyIsEditable } from '@garboard/trade/states';
import { type SurveyState, surveyStateLabels } from '@garboard/trade/vocabulary';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';

/**
 * The survey whose findings are about to change, held until the end of the transaction.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state` when it is closed or cancelled
 */
export async function writableSurvey(ctx: Ctx, surveyId: string) {
  await lockSurvey(ctx, surveyId);
  const survey = await loadSurvey(ctx, surveyId);
  const role = authorise(ctx.actor, survey, 'finding.write', 'Only the firm’s surveyors may write findings.');
  const state = survey.state as SurveyState;
  if (!surveyIsEditable(state)) {
    throw wrongState(
      `This survey is ${surveyStateLabels[state].toLowerCase()}. Reopen it before you change findings.`,
    );
  }
  return { survey, role };
}
