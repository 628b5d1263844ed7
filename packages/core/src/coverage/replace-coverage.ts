import type { Coverage, CoverageAnswer, coverageReplace } from '@garboard/contract/coverage';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { coverageOf } from './coverage-of.ts';
import { getCoverage } from './get-coverage.ts';

const noAnswer: CoverageAnswer = { reached: null, reason: '', lookedFrom: '' };

/** Answers for every system at once; those left out become unanswered, those told the same stay untouched. */
export async function replaceCoverage(
  ctx: Ctx,
  input: { surveyId: string; items: z.output<typeof coverageReplace>['items'] },
): Promise<Coverage> {
  const { survey, role } = await writableSurvey(ctx, input.surveyId, 'coverage.write');
  const told = new Map(input.items.map(({ system, ...answer }) => [system, answer]));
  const changes = (await coverageOf(ctx, survey)).flatMap((before) => {
    const answer = told.get(before.system) ?? noAnswer;
    const same = (Object.keys(noAnswer) as (keyof CoverageAnswer)[]).every((k) => answer[k] === before[k]);
    return same ? [] : [{ system: before.system, version: before.version + 1, ...answer }];
  });
  if (changes.length > 0) {
    const at = { firmId: survey.firmId, surveyId: survey.id };
    await ctx.tx.coverageAnswer.deleteMany({
      where: { surveyId: survey.id, system: { in: changes.map((c) => c.system) } },
    });
    const updatedAt = ctx.clock();
    await ctx.tx.coverageAnswer.createMany({ data: changes.map((c) => ({ ...at, ...c, updatedAt })) });
    await recordEvent(ctx, {
      ...at,
      kind: 'coverage.replaced',
      role,
      data: { count: String(changes.length) },
    });
  }
  return getCoverage(ctx, survey.id);
}
