import { reviewDecisions, reviewStates } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { actorRef, id, instant, pageQuery, sha256, text } from './common.ts';

/** Asks another surveyor of the firm to look the record through before it is issued. */
export const reviewAsk = z.strictObject({
  reviewerId: id.nullable().default(null).meta({
    description: 'The person who is asked; any surveyor or principal but the author when left out',
  }),
  note: text(4000).default('').meta({ description: 'What to look at' }),
});

export const review = z
  .object({
    id,
    surveyId: id,
    state: z.enum(reviewStates),
    askedBy: z.object({ id: id.nullable(), name: z.string() }),
    askedAt: instant,
    note: z.string(),
    reviewer: z.object({ id, name: z.string() }).nullable().meta({ description: 'Who was asked by name' }),
    decidedBy: z.string().nullable(),
    decidedAt: instant.nullable(),
    reason: z.string(),
    record: sha256.nullable().meta({ description: 'Sum of the record that was approved' }),
  })
  .meta({ id: 'Review' });
export type Review = z.infer<typeof review>;

/** How a survey's review stands. */
export const reviewStanding = z
  .object({
    required: z.boolean().meta({ description: 'Whether the firm issues nothing without it' }),
    record: sha256.meta({ description: 'Sum of the record as it is now: an approval is given to it' }),
    latest: review.nullable(),
    stands: z.boolean().meta({ description: 'Whether the record as it is now has been approved' }),
    openThreads: z.int().meta({ description: 'Threads of comments that are not settled' }),
    may: z.object({ ask: z.boolean(), decide: z.boolean(), comment: z.boolean() }),
  })
  .meta({ id: 'ReviewStanding' });
export type ReviewStanding = z.infer<typeof reviewStanding>;

export const reviewDecision = z
  .strictObject({
    decision: z.enum(reviewDecisions),
    record: sha256.optional().meta({ description: 'Sum of the record that was read; needed to approve' }),
    reason: text(4000).default('').meta({ description: 'What has to be done; needed to send it back' }),
  })
  .refine((d) => d.decision !== 'send-back' || d.reason !== '', {
    path: ['reason'],
    message: 'Say what has to be done before it can be approved.',
  })
  .refine((d) => d.decision !== 'approve' || d.record !== undefined, {
    path: ['record'],
    message: 'Send the sum of the record that you read, from GET …/review.',
  });

export const reviewCommentCreate = z.strictObject({
  findingId: id.nullable().default(null).meta({ description: 'The finding it is about; null: the whole' }),
  replyTo: id.nullable().default(null).meta({ description: 'The comment that began the thread' }),
  text: text(8000).min(1, 'Write something first.'),
});
export const reviewCommentPatch = z.strictObject({
  settled: z.boolean().meta({ description: 'Of the comment that began a thread: whether it is done with' }),
});
export const reviewComment = z
  .object({
    id,
    surveyId: id,
    findingId: id.nullable(),
    replyTo: id.nullable(),
    text: z.string(),
    by: actorRef,
    at: instant,
    settledAt: instant.nullable().meta({ description: 'Only on the comment that began the thread' }),
    settledBy: z.string().nullable(),
  })
  .meta({ id: 'ReviewComment' });
export type ReviewComment = z.infer<typeof reviewComment>;

export const reviewCommentQuery = pageQuery.extend({
  findingId: id.optional().meta({ description: 'Only those on this finding' }),
});
