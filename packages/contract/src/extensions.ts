import { z } from 'zod';
import { actorRef, day, id, instant, text } from './common.ts';

/** Gives more time for a finding that isn't decided yet. */
export const extensionCreate = z.strictObject({
  dueOn: day.meta({ description: 'The new last day; later than the one that stands' }),
  reason: text(2_000).min(1, 'Say why more time is given; the owner and the insurer read it.'),
});

export const extension = z
  .object({
    id,
    findingId: id,
    from: day.nullable().meta({ description: 'The day that stood before' }),
    dueOn: day,
    reason: z.string(),
    by: actorRef,
    at: instant,
  })
  .meta({ id: 'Extension' });
export type Extension = z.infer<typeof extension>;
