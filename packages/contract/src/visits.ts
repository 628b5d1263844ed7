import { visitAnswers, visitStates } from '@garboard/trade/engagement';
import { attendanceConditions, partyRoles } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { id, instant, line, text, versioned } from './common.ts';

const fields = {
  startsAt: instant,
  endsAt: instant,
  place: line(160),
  condition: z.enum(attendanceConditions),
  note: text(2_000).meta({ description: 'What everybody asked has to know' }),
  partyIds: z.array(id).max(20).meta({ description: 'The parties asked to be there or to make it possible' }),
};
export const visitCreate = z.strictObject({
  ...fields,
  note: fields.note.default(''),
  partyIds: fields.partyIds.default([]),
});
export const visitPatch = z.strictObject(fields).partial();

export const visit = z
  .object({
    id,
    surveyId: id,
    state: z.enum(visitStates),
    startsAt: instant,
    endsAt: instant,
    timeZone: z.string(),
    place: z.string(),
    condition: z.enum(attendanceConditions),
    note: z.string(),
    asks: z
      .array(
        z.object({
          partyId: id,
          name: z.string(),
          role: z.enum(partyRoles),
          answer: z.enum(visitAnswers),
          note: z.string(),
          answeredAt: instant.nullable(),
          mine: z.boolean().meta({ description: 'Whether it is the caller who is asked' }),
        }),
      )
      .meta({ description: 'Who was asked and what they said; parties see what concerns them' }),
    ...versioned,
  })
  .meta({ id: 'Visit' });
export type VisitView = z.infer<typeof visit>;

export const visitAnswer = z.strictObject({
  answer: z.enum(['confirmed', 'declined']),
  note: text(1_000).default(''),
});

export const calendarFeed = z
  .object({
    address: z
      .string()
      .nullable()
      .meta({ description: 'The secret address; shown once, when it is made, and null afterwards' }),
    createdAt: instant.nullable().meta({ description: 'Null when there is none' }),
    lastReadAt: instant.nullable(),
  })
  .meta({ id: 'CalendarFeed' });
export const calendarParams = z.object({ token: z.string().min(20).max(100) });
