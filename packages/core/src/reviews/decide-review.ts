import type { Review, reviewDecision } from '@garboard/contract/reviews';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { notAllowed, Refusal, wrongState } from '../problems.ts';
import { freezeRecord } from '../reports/freeze-snapshot.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { recordSum } from './record-sum.ts';
import { isAuthor, latestReview, presentReview } from './review-standing.ts';

export interface DecideReview {
  surveyId: string;
  decision: z.output<typeof reviewDecision>;
}

/**
 * Approves the record as the reviewer read it, or sends it back with a reason. An approval is given to the sum of
 * the record, so that any later edit voids it.
 *
 * @throws Refusal `not-found`; `not-allowed` for authors; `wrong-state` when no review waits; `stale-version` when
 * the record was changed after it was read.
 */
export async function decideReview(ctx: Ctx, input: DecideReview): Promise<Review> {
  const { decision, record: read, reason } = input.decision;
  await lockSurvey(ctx, input.surveyId);
  const survey = await loadSurvey(ctx, input.surveyId);
  const role = authorise(ctx.actor, survey, 'review.decide', 'A second surveyor of the firm decides.');
  const review = await latestReview(ctx, survey.id);
  if (review?.state !== 'asked') throw wrongState('No review waits for a decision. Load the page again.');
  if (isAuthor(actorId(ctx.actor), survey, review)) {
    throw notAllowed('A record is reviewed by somebody else than who signs it and who asked.');
  }
  const approves = decision === 'approve';
  const record = approves ? await recordSum(ctx, await freezeRecord(ctx, survey.id)) : null;
  if (approves && record !== read) {
    throw new Refusal(
      'stale-version',
      'The record was changed after you opened it. Load it again, read what changed, and approve that.',
    );
  }
  const row = await ctx.tx.review.update({
    where: { id: review.id },
    data: {
      state: approves ? 'approved' : 'sent-back',
      record,
      reason,
      decidedById: actorId(ctx.actor),
      decidedBy: actorName(ctx.actor),
      decidedAt: ctx.clock(),
    },
  });
  if (!approves && survey.state === 'in-review') {
    await ctx.tx.survey.update({
      where: { id: survey.id },
      data: { state: 'drafting', version: { increment: 1 } },
    });
  }
  const { firmId } = survey;
  const kind = approves ? 'review.approved' : 'review.sent-back';
  const tell = [review.askedById, survey.surveyorId].flatMap((id) => id ?? []);
  await recordEvent(ctx, { firmId, surveyId: survey.id, kind, role, data: { reason }, tell });
  return presentReview(row);
}
