import type { CoverageAnswer, CoverageItem } from '@garboard/contract/coverage';
import { reachLabels } from '@garboard/trade/coverage';
import { type System, systemLabels } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { staleVersion } from '../problems.ts';
import { coverageOf } from './coverage-of.ts';

export interface AnswerCoverage {
  surveyId: string;
  system: System;
  answer: CoverageAnswer;
  ifMatch?: number | undefined;
}

/**
 * Answers for one system and leaves the others alone, so that two people aboard don't undo each other's work. The
 * same answer sent again changes nothing, whatever version it names.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state`; `stale-version` when somebody answered meanwhile
 */
export async function answerCoverage(ctx: Ctx, input: AnswerCoverage): Promise<CoverageItem> {
  const { survey, role } = await writableSurvey(ctx, input.surveyId, 'coverage.write');
  const { system, answer, ifMatch } = input;
  const at = { firmId: survey.firmId, surveyId: survey.id };
  const itemNow = async () =>
    (await coverageOf(ctx, survey)).find((i) => i.system === system) as CoverageItem;
  const before = await itemNow();
  if (
    before.reached === answer.reached &&
    before.reason === answer.reason &&
    before.lookedFrom === answer.lookedFrom
  ) {
    return before;
  }
  if (ifMatch !== undefined && ifMatch !== before.version) throw staleVersion('answer');
  // The survey's row is held, so that nobody else can write between the look and this.
  const updatedAt = ctx.clock();
  await ctx.tx.coverageAnswer.upsert({
    where: { surveyId_system: { surveyId: survey.id, system } },
    create: { ...at, system, ...answer, updatedAt },
    update: { ...answer, updatedAt, version: { increment: 1 } },
  });
  const reached = answer.reached ? reachLabels[answer.reached].toLowerCase() : 'answer taken back';
  await recordEvent(ctx, {
    ...at,
    kind: 'coverage.answered',
    role,
    data: { system: systemLabels[system], reached },
  });
  return itemNow();
}
