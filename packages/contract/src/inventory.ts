import { systems } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { day, id, instant, line, optionalLine, pageQuery, text, versioned } from './common.ts';

const fields = {
  system: z.enum(systems),
  name: line(120).meta({
    description: 'What it is, in usual words or the surveyor’s own',
    example: 'Gas hose',
  }),
  maker: optionalLine(120),
  serialNumber: optionalLine(120),
  place: optionalLine(200).meta({ description: 'Where on board it is kept' }),
  count: z.int().min(1).max(9999),
  madeOn: day.nullable().meta({ description: 'When it was made or fitted; the first day of a marked month' }),
  expiresOn: day
    .nullable()
    .meta({ description: 'The last day on which it is good; of a marked month its last' }),
  note: text(4000),
};

export const inventoryCreate = z.strictObject({
  id: id.optional().meta({ description: 'Made by the client: sent again, it answers the item already kept' }),
  system: fields.system,
  name: fields.name,
  maker: fields.maker.default(null),
  serialNumber: fields.serialNumber.default(null),
  place: fields.place.default(null),
  count: fields.count.default(1),
  madeOn: fields.madeOn.default(null),
  expiresOn: fields.expiresOn.default(null),
  note: fields.note.default(''),
});
export const inventoryPatch = z.strictObject(fields).partial();

const kept = {
  id,
  surveyId: id,
  system: z.enum(systems),
  name: z.string(),
  maker: z.string().nullable(),
  serialNumber: z.string().nullable(),
  place: z.string().nullable(),
  count: z.int(),
  madeOn: day.nullable(),
  expiresOn: day.nullable(),
  expired: z.boolean().meta({ description: 'Whether its last day has passed where the survey took place' }),
};

export const inventoryItem = z
  .object({
    ...kept,
    note: z.string(),
    may: z.object({ edit: z.boolean() }).meta({ description: 'What the caller may do now' }),
    createdAt: instant,
    updatedAt: instant,
    ...versioned,
  })
  .meta({ id: 'InventoryItem' });
export type InventoryItem = z.infer<typeof inventoryItem>;

/** Equipment with an expiry date, as the firm's list over all its boats shows it. */
export const expiry = z
  .object({ ...kept, expiresOn: day, surveyNumber: z.string(), vesselId: id, vesselName: z.string() })
  .meta({ id: 'Expiry' });
export type Expiry = z.infer<typeof expiry>;

export const expiryQuery = pageQuery.extend({
  before: day.optional().meta({ description: 'Only what expires before this day' }),
});
