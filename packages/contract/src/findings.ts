import { costBases, isCurrency, largestCost } from '@garboard/trade/costs';
import { probabilityLevels, severityCategories } from '@garboard/trade/grading';
import { clearanceStates, findingStates, harms, systems, urgencies } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { clientId, day, id, instant, line, optionalLine, pageQuery, text, versioned } from './common.ts';
import { findingItem, itemsWritten } from './finding-items.ts';
import { worksheetOfFinding } from './worksheets.ts';

export const position = z
  .strictObject({
    along: z.number().min(0).max(1).meta({ description: 'From the stem (0) to the stern (1)' }),
    height: z.number().min(0).max(1).meta({ description: 'From the keel (0) to the deck or masthead (1)' }),
    side: z.enum(['port', 'centre', 'starboard']),
  })
  .meta({ id: 'Position' });

const minorUnits = z
  .int('Give the cost in whole minor units, such as cents.')
  .min(0, 'A cost can’t be less than nothing.')
  .max(largestCost, 'That is more than a cost here can be.');

/** What putting a finding right may cost. */
export const findingCost = z
  .strictObject({
    low: minorUnits.meta({ description: 'In minor units of the currency, such as cents' }),
    high: minorUnits,
    currency: z
      .string()
      .refine(isCurrency, 'Give the currency by its three letters in ISO 4217, such as EUR.')
      .meta({ example: 'EUR' }),
    basis: z
      .enum(costBases, 'Say whether it is a “quotation” or an “opinion”.')
      .meta({ description: 'A yard’s quotation, or the surveyor’s opinion' }),
    note: text(500).default('').meta({ description: 'Such as whose quotation, of which day' }),
  })
  .refine((cost) => cost.low <= cost.high, {
    path: ['high'],
    message: 'The upper end of a range can’t be below its lower end.',
  })
  .meta({ id: 'FindingCost' });

/** Severity and probability as the published matrix has them; they suggest an urgency and never set it. */
export const findingGrading = z
  .strictObject({
    severity: z.literal(severityCategories, 'Severity is a category from 1 to 4.'),
    probability: z.enum(probabilityLevels, 'Probability is a level from A to F.'),
  })
  .meta({ id: 'FindingGrading', description: 'MIL-STD-882E, tables I and II' });

const fields = {
  system: z.enum(systems),
  title: line(200),
  observed: text(40_000).meta({ description: 'What was seen, where and how much' }),
  consequence: text(40_000).meta({ description: 'Why it matters' }),
  recommendation: text(40_000).meta({ description: 'How to put it right' }),
  urgency: z.enum(urgencies),
  withinDays: z.int().min(1).max(3650).nullable().meta({ description: 'Only with urgency within-days' }),
  harms: z.array(z.enum(harms)).max(11),
  references: z.array(line(200)).max(30).meta({ description: 'Standards and regulations by designation' }),
  photoIds: z.array(id).max(60).meta({ description: 'Photos of this survey in the order of the report' }),
  catalogueKey: optionalLine(120).meta({ description: 'The known defect it began from' }),
  catalogueVersion: z
    .int()
    .min(1)
    .nullable()
    .meta({ description: 'Of that entry; the current one when left out' }),
  position: position.nullable(),
  cost: findingCost.nullable(),
  grading: findingGrading.nullable(),
  items: itemsWritten,
  dueOnSet: day.nullable().meta({
    description: 'The last day as set by hand; null for the one that urgency and firm give',
  }),
};

type Timed = { urgency?: string | undefined; withinDays?: number | null | undefined };
export const daysFit = (f: Timed) =>
  f.urgency === undefined || (f.urgency === 'within-days') === (f.withinDays != null);
export const daysMessage = {
  path: ['withinDays'],
  message: 'State the number of days with urgency within-days, and only then.',
};

export const findingCreate = z
  .strictObject({
    id: clientId.optional(),
    system: fields.system,
    title: fields.title,
    observed: fields.observed.default(''),
    consequence: fields.consequence.default(''),
    recommendation: fields.recommendation.default(''),
    urgency: fields.urgency,
    withinDays: fields.withinDays.default(null),
    harms: fields.harms.default([]),
    references: fields.references.default([]),
    photoIds: fields.photoIds.default([]),
    catalogueKey: fields.catalogueKey.default(null),
    catalogueVersion: fields.catalogueVersion.default(null),
    position: fields.position.default(null),
    cost: fields.cost.default(null),
    grading: fields.grading.default(null),
    items: fields.items.default([]),
    dueOnSet: fields.dueOnSet.default(null),
  })
  .refine(daysFit, daysMessage);
export const findingPatch = z.strictObject(fields).partial();

const findingPhoto = z.object({
  id,
  caption: z.string(),
  width: z.int(),
  height: z.int(),
  takenAt: instant.nullable(),
  images: z.object({ thumb: z.string().nullable(), screen: z.string().nullable() }),
});

export const finding = z
  .object({
    id,
    surveyId: id,
    number: z.int().meta({ description: 'Place in the report, from 1' }),
    state: z.enum(findingStates),
    system: z.enum(systems),
    title: z.string(),
    observed: z.string(),
    consequence: z.string(),
    recommendation: z.string(),
    urgency: z.enum(urgencies),
    withinDays: z.int().nullable(),
    dueOn: day.nullable(),
    dueOnSet: day.nullable().meta({ description: 'Set by hand; for the firm only' }),
    overdue: z.boolean(),
    items: z.array(findingItem).meta({ description: 'Things to be put right one by one' }),
    itemsLeft: z.int().meta({ description: 'How many of them nobody has decided on' }),
    limit: z
      .object({ text: z.string(), until: day.nullable() })
      .nullable()
      .meta({ description: 'Within what it was accepted as it is' }),
    revision: z
      .int()
      .nullable()
      .meta({ description: 'Of the report that last issued it; evidence may name it' }),
    requiresClearing: z.boolean(),
    harms: z.array(z.enum(harms)),
    references: z.array(z.string()),
    photoIds: z.array(id),
    photos: z.array(findingPhoto),
    latestClearance: z
      .object({ id, state: z.enum(clearanceStates), sentAt: instant, decidedAt: instant.nullable() })
      .nullable()
      .meta({ description: 'The evidence sent last, for those who may see evidence' }),
    worksheets: z
      .array(worksheetOfFinding)
      .meta({ description: 'Its measurements, in the order they were taken' }),
    catalogueKey: z.string().nullable(),
    catalogueVersion: z.int().nullable(),
    position: position.nullable(),
    cost: findingCost.nullable().meta({ description: 'For parties only when the firm prints costs' }),
    grading: findingGrading.nullable().meta({ description: 'For the firm only' }),
    withdrawal: z
      .object({ reason: z.string(), at: instant, by: z.string() })
      .nullable()
      .meta({ description: 'Why the surveyor withdrew it after it was issued, and when' }),
    may: z
      .object({
        edit: z.boolean(),
        sendEvidence: z.boolean(),
        decide: z.boolean(),
        withdraw: z.boolean(),
        extend: z.boolean(),
        reInspect: z.boolean(),
        comment: z.boolean(),
      })
      .meta({ description: 'What the caller may do now' }),
    createdAt: instant,
    updatedAt: instant,
    ...versioned,
  })
  .meta({ id: 'Finding' });
export type Finding = z.infer<typeof finding>;

export const findingQuery = pageQuery.extend({
  urgency: z.enum(urgencies).optional(),
  state: z.enum(findingStates).optional(),
});
/** Takes an issued finding back; the reason is shown to everyone to whom the report was released. */
export const withdrawalBody = z.strictObject({
  reason: text(2000)
    .min(1, 'Say why it is withdrawn; everyone who has the report is told.')
    .meta({ description: 'Told to everyone to whom the report was released' }),
});
export const findingOrder = z.strictObject({ ids: z.array(id).min(1).max(1000) });

/** A draft that was deleted and can still be brought back. */
export const deletedFinding = z
  .object({
    id,
    number: z.int().meta({ description: 'Its place before' }),
    title: z.string(),
    system: z.enum(systems),
    urgency: z.enum(urgencies),
    deletedAt: instant,
    deletedBy: z.string(),
    removedOn: day.meta({ description: 'When it goes for good' }),
  })
  .meta({ id: 'DeletedFinding' });
export type DeletedFinding = z.infer<typeof deletedFinding>;
