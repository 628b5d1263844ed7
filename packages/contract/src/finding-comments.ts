import { partyRoles } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { actorRef, clientId, id, instant, text } from './common.ts';

const audience = z.array(z.enum(partyRoles)).max(partyRoles.length);

/** Something said on an issued finding. The firm always reads it, and so does its author. */
export const findingCommentCreate = z.strictObject({
  id: clientId.optional(),
  text: text(5_000).min(1, 'Write what you have to say.'),
  visibleTo: audience.default([]).meta({
    description: 'The parties who may read it, besides the firm and yourself',
  }),
});

export const findingComment = z
  .object({
    id,
    findingId: id,
    text: z.string().meta({ description: 'Empty once it was removed' }),
    visibleTo: audience,
    by: actorRef,
    at: instant,
    removedAt: instant.nullable().meta({ description: 'When its author took it back' }),
    may: z.object({ remove: z.boolean() }).meta({ description: 'What the caller may do now' }),
  })
  .meta({ id: 'FindingComment' });
export type FindingComment = z.infer<typeof findingComment>;
