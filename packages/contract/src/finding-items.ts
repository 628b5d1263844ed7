import { z } from 'zod';
import { clientId, day, id, line } from './common.ts';

/** How far one of several things to be put right has come; the words of a finding's own state. */
export const itemStates = ['open', 'evidence-sent', 'returned', 'cleared', 'accepted-as-is'] as const;

/** The most things that one finding may ask for. */
export const mostItems = 30;

const wording = line(300).meta({ description: 'One thing to be put right, such as “Renew the port hose”' });

/** The items of a finding as they are written; one without an id is new. */
export const itemsWritten = z
  .array(z.strictObject({ id: clientId.optional(), text: wording }))
  .max(mostItems, `At most ${mostItems} items; record the rest as findings of their own.`)
  .refine((items) => new Set(items.map((item) => item.id ?? item)).size === items.length, {
    message: 'An item is listed twice.',
  })
  .meta({ description: 'Things to be put right one by one; none when the finding is cleared as a whole' });

/** An item as it stands. */
export const findingItem = z
  .object({
    id,
    text: z.string(),
    state: z.enum(itemStates),
    limit: z.string().nullable().meta({ description: 'Within what it was accepted as it is' }),
    limitUntil: day.nullable().meta({ description: 'Until when' }),
  })
  .meta({ id: 'FindingItem' });
export type FindingItem = z.infer<typeof findingItem>;
