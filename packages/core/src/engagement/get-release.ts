import type { surveyRelease } from '@garboard/contract/quotations';
import type { ReleaseRule } from '@garboard/trade/engagement';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { type LoadedSurvey, loadSurvey } from '../surveys/load-survey.ts';
import { ratesOf } from './firm-rates.ts';

export type SurveyReleaseView = z.output<typeof surveyRelease>;

/** When the issued report is handed over, and whether it is withheld. @throws Refusal `not-found`, `not-allowed` */
export async function getRelease(ctx: Ctx, surveyId: string): Promise<SurveyReleaseView> {
  const survey = await loadSurvey(ctx, surveyId);
  authorise(ctx.actor, survey, 'release.read', 'When a report is handed over is the survey firm’s affair.');
  return releaseOf(ctx, survey);
}

/** The same for a survey at hand. */
export async function releaseOf(
  ctx: Ctx,
  survey: Pick<LoadedSurvey, 'id' | 'firmId' | 'held'>,
): Promise<SurveyReleaseView> {
  const row = await ctx.tx.surveyRelease.findUnique({ where: { surveyId: survey.id } });
  const rule = (row?.rule as ReleaseRule | undefined) ?? (await ratesOf(ctx, survey.firmId)).releaseRule;
  return {
    rule,
    settled: row !== null,
    held: survey.held,
    wordAt: row?.wordAt?.toISOString() ?? null,
    wordBy: row?.wordBy ?? null,
    reason: row?.reason ?? '',
  };
}
