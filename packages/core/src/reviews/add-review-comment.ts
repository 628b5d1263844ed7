import type { ReviewComment, reviewCommentCreate } from '@garboard/contract/reviews';
import { newId } from '@garboard/db/ids';
import { surveyIsEditable } from '@garboard/trade/states';
import { type SurveyState, surveyStateLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, wrongState } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { presentReviewComment } from './present-review-comment.ts';
import { latestReview } from './review-standing.ts';

export interface AddReviewComment {
  surveyId: string;
  comment: z.output<typeof reviewCommentCreate>;
}

/**
 * Comments on a finding or on the whole record, or replies to a comment. A reply opens a settled thread again.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`; `wrong-state` before a review was asked for.
 */
export async function addReviewComment(ctx: Ctx, input: AddReviewComment): Promise<ReviewComment> {
  const { text } = input.comment;
  const survey = await loadSurvey(ctx, input.surveyId);
  const role = authorise(ctx.actor, survey, 'review.comment', 'Surveyors of the firm comment on a review.');
  const state = survey.state as SurveyState;
  if (!surveyIsEditable(state)) {
    throw wrongState(`This survey is ${surveyStateLabels[state].toLowerCase()}; its review is over.`);
  }
  if (!(await latestReview(ctx, survey.id))) {
    throw wrongState('No review has been asked for. Ask for one first.');
  }
  const of = { surveyId: survey.id };
  const thread = input.comment.replyTo
    ? await ctx.tx.reviewComment.findFirst({ where: { ...of, id: input.comment.replyTo, replyToId: null } })
    : null;
  if (input.comment.replyTo && !thread) {
    throw invalidField('/replyTo', 'There is no such comment that began a thread of this review.');
  }
  const findingId = thread ? thread.findingId : input.comment.findingId;
  const finding = findingId
    ? await ctx.tx.finding.findFirst({ where: { ...of, id: findingId }, select: { title: true } })
    : null;
  if (findingId && !finding && !thread) {
    throw invalidField('/findingId', 'There is no such finding in this survey.');
  }
  const row = await ctx.tx.reviewComment.create({
    data: {
      ...{ id: newId(), firmId: survey.firmId, ...of, findingId, replyToId: thread?.id ?? null, text },
      ...{ byId: actorId(ctx.actor), byName: actorName(ctx.actor), byRole: role, at: ctx.clock() },
    },
  });
  if (thread?.settledAt) {
    await ctx.tx.reviewComment.update({
      where: { id: thread.id },
      data: { settledAt: null, settledBy: null },
    });
  }
  const line = [...text.replace(/\s+/g, ' ')];
  const shown = line.length <= 160 ? line.join('') : `${line.slice(0, 159).join('')}…`;
  await recordEvent(ctx, {
    ...{ firmId: survey.firmId, ...of, kind: 'review.commented', role },
    ...(finding && findingId ? { findingId } : {}),
    data: { title: finding?.title ?? '', text: shown },
  });
  return presentReviewComment(row);
}
