import type { Review, reviewAsk } from '@garboard/contract/reviews';
import { newId } from '@garboard/db/ids';
import { surveyMayBeIssued } from '@garboard/trade/states';
import { type SurveyState, surveyStateLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, wrongState } from '../problems.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { latestReview, presentReview } from './review-standing.ts';

export interface AskReview {
  surveyId: string;
  ask: z.output<typeof reviewAsk>;
}

/**
 * Asks a second surveyor to look the record through; a survey that is being written moves to `in-review`.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` while one is asked for, or when nothing can be issued.
 */
export async function askReview(ctx: Ctx, { surveyId, ask }: AskReview): Promise<Review> {
  await lockSurvey(ctx, surveyId);
  const survey = await loadSurvey(ctx, surveyId);
  const role = authorise(ctx.actor, survey, 'review.ask', 'A surveyor or principal asks for a review.');
  const state = survey.state as SurveyState;
  if (!surveyMayBeIssued(state)) {
    throw wrongState(
      `This survey is “${surveyStateLabels[state]}”; a record is reviewed once the vessel was attended.`,
    );
  }
  if ((await latestReview(ctx, survey.id))?.state === 'asked') {
    throw wrongState('A review is asked for already and waits for its decision.');
  }
  const reviewer = ask.reviewerId ? await reviewerOf(ctx, survey, ask.reviewerId) : null;
  const { firmId } = survey;
  const row = await ctx.tx.review.create({
    data: {
      id: newId(),
      firmId,
      surveyId: survey.id,
      note: ask.note,
      askedById: actorId(ctx.actor),
      askedByName: actorName(ctx.actor),
      askedAt: ctx.clock(),
      reviewerId: ask.reviewerId,
      reviewerName: reviewer,
    },
  });
  if (state !== 'issued' && state !== 'in-review') {
    await ctx.tx.survey.update({
      where: { id: survey.id },
      data: { state: 'in-review', version: { increment: 1 } },
    });
  }
  await recordEvent(ctx, {
    ...{ firmId, surveyId: survey.id, kind: 'review.asked', role },
    data: { reviewer },
    tell: ask.reviewerId ? [ask.reviewerId] : [],
  });
  return presentReview(row);
}

/** The name of who is asked. @throws Refusal `invalid-input` for somebody who couldn't decide. */
async function reviewerOf(
  ctx: Ctx,
  survey: { firmId: string; surveyorId: string | null },
  personId: string,
): Promise<string> {
  const member = await ctx.tx.firmMember.findFirst({
    where: { firmId: survey.firmId, personId, role: { in: ['principal', 'surveyor'] } },
    select: { person: { select: { name: true } } },
  });
  if (!member) throw invalidField('/reviewerId', 'A reviewer is a surveyor or principal of the firm.');
  if (personId === survey.surveyorId || personId === actorId(ctx.actor)) {
    throw invalidField(
      '/reviewerId',
      'A record is reviewed by somebody else than who signs it and who asks.',
    );
  }
  return member.person.name;
}
