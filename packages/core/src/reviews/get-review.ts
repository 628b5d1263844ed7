import type { ReviewStanding } from '@garboard/contract/reviews';
import { surveyIsEditable, surveyMayBeIssued } from '@garboard/trade/states';
import type { SurveyState } from '@garboard/trade/vocabulary';
import { authorise, may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { freezeRecord } from '../reports/freeze-snapshot.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { recordSum } from './record-sum.ts';
import { approvalStands, latestReview, mayDecide, presentReview } from './review-standing.ts';

/** How a survey's review stands. @throws Refusal `not-found`, `not-allowed` */
export async function getReview(ctx: Ctx, surveyId: string): Promise<ReviewStanding> {
  const survey = await loadSurvey(ctx, surveyId);
  authorise(ctx.actor, survey, 'review.read', 'Reviews are for the survey firm alone.');
  const { reviewRequired } = await ctx.tx.firm.findUniqueOrThrow({
    where: { id: survey.firmId },
    select: { reviewRequired: true },
  });
  const latest = await latestReview(ctx, survey.id);
  const record = await recordSum(ctx, await freezeRecord(ctx, survey.id));
  const openThreads = await ctx.tx.reviewComment.count({
    where: { surveyId: survey.id, replyToId: null, settledAt: null },
  });
  const state = survey.state as SurveyState;
  return {
    required: reviewRequired,
    record,
    latest: latest && presentReview(latest),
    stands: approvalStands(survey, latest, record),
    openThreads,
    may: {
      ask: may(ctx.actor, survey, 'review.ask') && latest?.state !== 'asked' && surveyMayBeIssued(state),
      decide: mayDecide(ctx, survey, latest),
      comment: may(ctx.actor, survey, 'review.comment') && latest !== null && surveyIsEditable(state),
    },
  };
}
