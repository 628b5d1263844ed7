import type { SurveyChanges } from '@garboard/contract/reports';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { freezeRecord } from './freeze-snapshot.ts';
import { changesOf } from './revision-history.ts';

/** What the next revision would say that it changes, as the record stands. @throws Refusal `not-found`, `not-allowed` */
export async function getSurveyChanges(ctx: Ctx, surveyId: string): Promise<SurveyChanges> {
  const survey = await loadSurvey(ctx, surveyId);
  authorise(ctx.actor, survey, 'report.preview', 'Only the survey firm sees what is not issued yet.');
  if (!survey.issuedAt) return { changes: null };
  return { changes: await changesOf(ctx, survey.id, await freezeRecord(ctx, survey.id)) };
}
