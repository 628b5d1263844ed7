import { outcomes } from '@garboard/trade/re-inspection';
import { attendanceConditions, findingStates } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { actorRef, clientId, day, id, instant, line, text } from './common.ts';
import { mostItems } from './finding-items.ts';

const seen = z
  .strictObject({
    findingId: id,
    itemIds: z.array(id).max(mostItems).default([]).meta({
      description: 'The items it is about; none is all that are left',
    }),
    outcome: z.enum(outcomes),
    note: text(10_000).default('').meta({ description: 'What was seen; needed when it was not put right' }),
    limit: text(1_000).default('').meta({ description: 'Needed with as-it-is: within what' }),
    limitUntil: day.nullable().default(null),
    photoIds: z
      .array(id)
      .max(20)
      .default([])
      .meta({ description: 'Photos of this survey taken at the visit' }),
  })
  .refine((s) => s.outcome !== 'not-put-right' || s.note.length > 0, {
    path: ['note'],
    message: 'Say what was seen and what is still missing.',
  })
  .refine((s) => s.outcome !== 'as-it-is' || s.limit.length > 0, {
    path: ['limit'],
    message: 'State the limit within which it may stay as it is.',
  })
  .refine((s) => s.outcome === 'as-it-is' || (s.limit === '' && s.limitUntil === null), {
    path: ['limit'],
    message: 'A limit goes only with leaving it as it is.',
  });

/** A visit after the report at which findings were looked at again, all of them in one go. */
export const reInspectionCreate = z.strictObject({
  id: clientId.optional(),
  date: day,
  place: line(160),
  condition: z.enum(attendanceConditions),
  note: text(10_000).default('').meta({ description: 'On the visit as a whole' }),
  items: z.array(seen).min(1, 'Say of at least one finding what was seen.').max(300),
});

export const reInspection = z
  .object({
    id,
    surveyId: id,
    date: day,
    place: z.string(),
    condition: z.enum(attendanceConditions),
    note: z.string(),
    by: actorRef,
    at: instant,
    items: z
      .array(
        z.object({
          findingId: id,
          number: z.int(),
          title: z.string(),
          itemIds: z.array(id),
          outcome: z.enum(outcomes),
          note: z.string(),
          limit: z.string().nullable(),
          limitUntil: day.nullable(),
          photoIds: z.array(id).meta({ description: 'For the firm; others see them with the evidence' }),
          clearanceId: id.nullable().meta({ description: 'The evidence that it became or decided' }),
          stateAfter: z.enum(findingStates).meta({ description: 'How the finding stood after the visit' }),
        }),
      )
      .meta({ description: 'For parties only the findings they may see' }),
  })
  .meta({ id: 'ReInspection' });
export type ReInspection = z.infer<typeof reInspection>;
