import { clearanceStates, decisions } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { actorRef, day, id, instant, line, sha256, text } from './common.ts';
import { mostItems } from './finding-items.ts';
import { worksheetResult } from './worksheet-result.ts';

/** A part of a multipart form that is written in JSON. */
const json = <T extends z.ZodType>(schema: T, description: string) =>
  z
    .string()
    .max(60_000)
    .transform((value, ctx): unknown => {
      try {
        return JSON.parse(value);
      } catch {
        ctx.issues.push({ code: 'custom', message: 'Write this part in JSON.', input: value });
        return z.NEVER;
      }
    })
    .pipe(schema)
    .meta({ description });

/** The text parts of the multipart evidence form; its files come in parts named `file`. */
export const clearanceFields = z.strictObject({
  statement: text(20_000).min(1, 'Say what was done.'),
  workDoneBy: line(200),
  workDoneOn: day,
  itemIds: json(
    z.array(id).max(mostItems),
    'JSON: the items it covers; left out, all that are left',
  ).optional(),
  revision: z.coerce.number().int().min(1).optional().meta({
    description: 'The revision of the finding that was read; refused when it reads differently now',
  }),
  worksheetId: id.optional().meta({ description: 'A worksheet of the survey that proves it' }),
  worksheet: json(
    z.strictObject({ kind: z.string().max(80), inputs: z.record(z.string(), z.unknown()) }),
    'JSON: {kind, inputs}: a measurement taken again; its result is kept with the evidence',
  ).optional(),
  pairs: json(
    z.array(z.strictObject({ file: z.int().min(0), beforePhotoId: id })).max(60),
    'JSON: [{file, beforePhotoId}]: file (its place among the files, from 0) shows the same as that photo of the finding',
  ).optional(),
});

/** A photo of the finding that a photo of the evidence answers. */
export const answeredPhoto = z.object({
  photoId: id,
  caption: z.string(),
  images: z.object({ thumb: z.string().nullable(), screen: z.string().nullable() }),
});

export const clearanceFile = z
  .object({
    id,
    fileName: z.string(),
    mediaType: z.string(),
    bytes: z.int(),
    sha256,
    width: z.int().nullable(),
    height: z.int().nullable(),
    url: z.string().meta({ description: 'The file itself; for a photo its screen size' }),
    thumbUrl: z.string().nullable(),
    before: answeredPhoto.nullable().meta({ description: 'The photo of the finding that it answers' }),
  })
  .meta({ id: 'ClearanceFile' });

const limits = {
  limit: z.string().nullable().meta({ description: 'Within what it was accepted as it is' }),
  limitUntil: day.nullable().meta({ description: 'Until when; the finding is open again the day after' }),
};

/** One item of the finding that the evidence covers, and what was decided on it. */
export const coveredItem = z.object({
  itemId: id,
  text: z.string(),
  decision: z.enum(decisions).nullable(),
  reason: z.string().nullable(),
  ...limits,
});
export type CoveredItem = z.infer<typeof coveredItem>;

export const clearance = z
  .object({
    id,
    findingId: id,
    state: z.enum(clearanceStates),
    statement: z.string(),
    workDoneBy: z.string(),
    workDoneOn: day,
    revision: z.int().nullable().meta({ description: 'The revision of the report that it answers' }),
    items: z.array(coveredItem).meta({ description: 'The items it covers; none when the finding has none' }),
    worksheet: worksheetResult.nullable().meta({ description: 'The measurement that proves it' }),
    reInspectionId: id.nullable().meta({ description: 'The visit at which the surveyor saw it' }),
    sentBy: actorRef,
    sentAt: instant,
    files: z.array(clearanceFile),
    decision: z
      .enum(decisions)
      .nullable()
      .meta({ description: 'Null also when its items were decided apart' }),
    reason: z.string().nullable(),
    ...limits,
    decidedBy: actorRef.nullable(),
    decidedAt: instant.nullable(),
  })
  .meta({ id: 'Clearance' });
export type Clearance = z.infer<typeof clearance>;

interface Decided {
  decision?: 'accept' | 'return' | 'accept-as-is' | undefined;
  reason: string;
  limit: string;
  limitUntil: string | null;
}
const reasoned = {
  test: (d: Decided) => d.decision !== 'return' || d.reason.length > 0,
  at: { path: ['reason'], message: 'Give the reason: say what is still missing.' },
};
const limited = {
  test: (d: Decided) => d.decision !== 'accept-as-is' || d.limit.length > 0,
  at: { path: ['limit'], message: 'State the limit within which it is accepted as it is.' },
};
const onlyLimited = {
  test: (d: Decided) => d.decision === 'accept-as-is' || (d.limit === '' && d.limitUntil === null),
  at: { path: ['limit'], message: 'A limit goes only with accepting it as it is.' },
};

const decisionFields = {
  reason: text(4_000).default('').meta({ description: 'Needed when it is returned' }),
  limit: text(1_000).default('').meta({
    description: 'Needed with accept-as-is: within what, such as “inland waters only”',
  }),
  limitUntil: day.nullable().default(null).meta({ description: 'The last day of that limit' }),
};

/** What is decided on one item. */
export const itemDecision = z
  .strictObject({ itemId: id, decision: z.enum(decisions), ...decisionFields })
  .refine(reasoned.test, reasoned.at)
  .refine(limited.test, limited.at)
  .refine(onlyLimited.test, onlyLimited.at);

/** One decision for everything that the evidence covers, or one an item. */
export const decisionBody = z
  .strictObject({
    decision: z.enum(decisions).optional(),
    items: z.array(itemDecision).min(1).max(mostItems).optional(),
    ...decisionFields,
  })
  .refine((d) => (d.decision === undefined) !== (d.items === undefined), {
    path: ['decision'],
    message: 'Give one decision for all of it, or one for each item.',
  })
  .refine(reasoned.test, reasoned.at)
  .refine(limited.test, limited.at)
  .refine((d) => d.items !== undefined || onlyLimited.test(d), onlyLimited.at);

export const clearanceFileParams = z.object({ id, fileId: id });
export const clearanceFileQuery = z.object({
  size: z.enum(['thumb', 'screen', 'original']).default('original'),
});
