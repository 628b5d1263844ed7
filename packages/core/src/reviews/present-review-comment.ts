import type { ReviewComment } from '@garboard/contract/reviews';
import type { Prisma } from '@garboard/db/database';

export function presentReviewComment(row: Prisma.ReviewCommentGetPayload<object>): ReviewComment {
  return {
    id: row.id,
    surveyId: row.surveyId,
    findingId: row.findingId,
    replyTo: row.replyToId,
    text: row.text,
    by: { name: row.byName, role: row.byRole },
    at: row.at.toISOString(),
    settledAt: row.settledAt?.toISOString() ?? null,
    settledBy: row.settledBy,
  };
}
