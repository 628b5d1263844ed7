import type { Review } from '@garboard/contract/reviews';
import type { Prisma } from '@garboard/db/database';
import type { ReviewState } from '@garboard/trade/vocabulary';
import { actorId } from '../access/actor.ts';
import { may, type Standing } from '../access/policy.ts';
import type { Ctx } from '../context.ts';

export type ReviewRow = Prisma.ReviewGetPayload<object>;

/** The survey's latest review, whatever became of it. */
export async function latestReview(ctx: Ctx, surveyId: string): Promise<ReviewRow | null> {
  return ctx.tx.review.findFirst({ where: { surveyId }, orderBy: { id: 'desc' } });
}

type Authored = { surveyorId: string | null };

/** Whether this person is one of the record's authors: who signs it, or who asked for the review. */
export const isAuthor = (personId: string | null, survey: Authored, review: ReviewRow): boolean =>
  personId === null || personId === survey.surveyorId || personId === review.askedById;

/** Whether the actor may decide on this review now. */
export const mayDecide = (ctx: Ctx, survey: Standing & Authored, review: ReviewRow | null): boolean =>
  review?.state === 'asked' &&
  may(ctx.actor, survey, 'review.decide') &&
  !isAuthor(actorId(ctx.actor), survey, review);

/** Whether the record with this sum has been approved by somebody else than its authors. */
export const approvalStands = (survey: Authored, review: ReviewRow | null, record: string): boolean =>
  review?.state === 'approved' && review.record === record && !isAuthor(review.decidedById, survey, review);

export function presentReview(row: ReviewRow): Review {
  return {
    id: row.id,
    surveyId: row.surveyId,
    state: row.state as ReviewState,
    askedBy: { id: row.askedById, name: row.askedByName },
    askedAt: row.askedAt.toISOString(),
    note: row.note,
    reviewer: row.reviewerId && row.reviewerName ? { id: row.reviewerId, name: row.reviewerName } : null,
    decidedBy: row.decidedBy,
    decidedAt: row.decidedAt?.toISOString() ?? null,
    reason: row.reason,
    record: row.record,
  };
}
