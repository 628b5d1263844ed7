import type { ReviewComment } from '@garboard/contract/reviews';
import { actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import { visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { notFound, wrongState } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { presentReviewComment } from './present-review-comment.ts';

/**
 * Settles a thread of comments, or opens it again.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` for a reply, which is settled with its thread.
 */
export async function settleReviewComment(
  ctx: Ctx,
  { id, settled }: { id: string; settled: boolean },
): Promise<ReviewComment> {
  const comment = await ctx.tx.reviewComment.findFirst({
    where: { id, survey: visibleSurveys(ctx.actor) },
  });
  if (!comment) throw notFound('comment');
  const survey = await loadSurvey(ctx, comment.surveyId);
  const role = authorise(ctx.actor, survey, 'review.comment', 'Surveyors of the firm settle comments.');
  if (comment.replyToId) {
    throw wrongState('A reply is settled with its thread: settle the comment that began it.');
  }
  const changed = await ctx.tx.reviewComment.updateMany({
    where: { id, settledAt: settled ? null : { not: null } },
    data: settled
      ? { settledAt: ctx.clock(), settledBy: actorName(ctx.actor) }
      : { settledAt: null, settledBy: null },
  });
  if (changed.count > 0) {
    const { firmId, surveyId, findingId } = comment;
    const finding = findingId
      ? await ctx.tx.finding.findUnique({ where: { id: findingId }, select: { title: true } })
      : null;
    await recordEvent(ctx, {
      ...{ firmId, surveyId, kind: settled ? 'review.settled' : 'review.reopened', role },
      ...(finding && findingId ? { findingId } : {}),
      data: { title: finding?.title ?? '' },
    });
  }
  return presentReviewComment(await ctx.tx.reviewComment.findUniqueOrThrow({ where: { id } }));
}
