import { addReviewComment } from '@garboard/core/reviews/add-review-comment';
import { askReview } from '@garboard/core/reviews/ask-review';
import { decideReview } from '@garboard/core/reviews/decide-review';
import { getReview } from '@garboard/core/reviews/get-review';
import { listReviewComments } from '@garboard/core/reviews/list-review-comments';
import { settleReviewComment } from '@garboard/core/reviews/settle-review-comment';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function reviewRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'askReview', (ctx, { params, body }) =>
    askReview(ctx, { surveyId: params.id, ask: body }),
  );
  serve(app, deps, 'getReview', (ctx, { params }) => getReview(ctx, params.id));
  serve(app, deps, 'decideReview', (ctx, { params, body }) =>
    decideReview(ctx, { surveyId: params.id, decision: body }),
  );
  serve(app, deps, 'addReviewComment', (ctx, { params, body }) =>
    addReviewComment(ctx, { surveyId: params.id, comment: body }),
  );
  serve(app, deps, 'listReviewComments', (ctx, { params, query }) =>
    listReviewComments(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'updateReviewComment', (ctx, { params, body }) =>
    settleReviewComment(ctx, { id: params.id, settled: body.settled }),
  );
}
