import type { VisitView, visitAnswer } from '@garboard/contract/visits';
import { visitAnswerLabels } from '@garboard/trade/engagement';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { loadVisit, ownAsk, presentVisit } from './load-visit.ts';

/**
 * Confirms or declines a visit that one was asked to; a later answer replaces it.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` for who wasn't asked, or when it is over
 */
export async function answerVisit(
  ctx: Ctx,
  input: { id: string } & z.output<typeof visitAnswer>,
): Promise<VisitView> {
  const { id, answer, note } = input;
  const visit = await loadVisit(ctx, id);
  const role = authorise(ctx.actor, visit.survey, 'visit.answer', 'Only those who were asked answer.');
  const mine = ownAsk(ctx, visit);
  if (!mine) throw wrongState('You were not asked to this visit, so there is nothing to answer.');
  if (visit.state !== 'arranged') throw wrongState('This visit was made or called off already.');
  await ctx.tx.visitAsk.updateMany({
    where: { id: mine.id },
    data: { answer, note, answeredAt: ctx.clock() },
  });
  const { firmId, surveyId, place, startsAt, survey } = visit;
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'visit.answered', role },
    data: {
      ...{ name: mine.name, answer: visitAnswerLabels[answer].toLowerCase(), note, place },
      ...{ startsAt: startsAt.toISOString(), timeZone: survey.timeZone },
    },
  });
  return presentVisit(ctx, await loadVisit(ctx, id));
}
