import type { Coverage } from '@garboard/contract/coverage';
import { surveyIsEditable } from '@garboard/trade/states';
import type { SurveyState } from '@garboard/trade/vocabulary';
import { authorise, may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { coverageOf, unansweredOf } from './coverage-of.ts';

/** How far each system was reached, as the firm has written it so far. @throws Refusal `not-found`, `not-allowed` */
export async function getCoverage(ctx: Ctx, surveyId: string): Promise<Coverage> {
  const survey = await loadSurvey(ctx, surveyId);
  authorise(
    ctx.actor,
    survey,
    'coverage.read',
    'Coverage is drafted by the survey firm; the issued report prints it.',
  );
  const items = await coverageOf(ctx, survey);
  const edit = may(ctx.actor, survey, 'coverage.write') && surveyIsEditable(survey.state as SurveyState);
  return { items, unanswered: unansweredOf(items), may: { edit } };
}
