import type { ReviewComment, reviewCommentQuery } from '@garboard/contract/reviews';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, uuidForm } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { presentReviewComment } from './present-review-comment.ts';

/** Comments of a survey's reviews, oldest first. @throws Refusal `not-found`, `not-allowed` */
export async function listReviewComments(
  ctx: Ctx,
  query: z.output<typeof reviewCommentQuery> & { surveyId: string },
): Promise<Page<ReviewComment>> {
  const after = decodeCursor(query.cursor, uuidForm);
  const survey = await loadSurvey(ctx, query.surveyId);
  authorise(ctx.actor, survey, 'review.read', 'Reviews are for the survey firm alone.');
  const rows = await ctx.tx.reviewComment.findMany({
    where: {
      surveyId: survey.id,
      ...(query.findingId ? { findingId: query.findingId } : {}),
      ...(after ? { id: { gt: after } } : {}),
    },
    orderBy: { id: 'asc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.id);
  return { items: page.items.map(presentReviewComment), next: page.next };
}
