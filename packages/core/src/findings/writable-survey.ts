import { surveyIsEditable } from '@garboard/trade/states';
import { type SurveyState, surveyStateLabels } from '@garboard/trade/vocabulary';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';

const what = {
  'finding.write': 'findings',
  'finding.withdraw': 'findings',
  'finding.re-inspect': 'findings',
  'worksheet.write': 'worksheets',
  'coverage.write': 'coverage',
  'inventory.write': 'the equipment',
} as const;

/**
 * The survey whose findings or other records are about to change, held until the end of the transaction.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state` when it is closed or cancelled
 */
export async function writableSurvey(
  ctx: Ctx,
  surveyId: string,
  action: keyof typeof what = 'finding.write',
) {
  await lockSurvey(ctx, surveyId);
  const survey = await loadSurvey(ctx, surveyId);
  const role = authorise(ctx.actor, survey, action, `Only the firm’s surveyors may write ${what[action]}.`);
  const state = survey.state as SurveyState;
  if (!surveyIsEditable(state)) {
    throw wrongState(
      `This survey is ${surveyStateLabels[state].toLowerCase()}. Reopen it before you change ${what[action]}.`,
    );
  }
  return { survey, role };
}
