import { systems, urgencies } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { id, instant } from './common.ts';
import { importLimits } from './limits.ts';

export const importStates = ['checked', 'queued', 'running', 'done', 'failed'] as const;

/** What is to be said about a cell. */
const remark = z.object({
  column: z.string().meta({ description: 'The heading as the sheet has it; empty for the row as a whole' }),
  detail: z.string().meta({ description: 'What is wrong, and what to do' }),
});

/** What a row of the sheet becomes. */
export const importRow = z
  .object({
    line: z.int().meta({ description: 'Of the file, where the row begins' }),
    title: z.string(),
    system: z.enum(systems).nullable(),
    urgency: z.enum(urgencies).nullable(),
    withinDays: z.int().nullable(),
    photos: z.int().meta({ description: 'Photos that it names and that are there' }),
    finding: z
      .object({ id, number: z.int() })
      .nullable()
      .meta({ description: 'The finding that this very row became before; it is not made again' }),
    problems: z.array(remark).meta({ description: 'Why it can’t become a finding as it is' }),
    remarks: z.array(remark).meta({ description: 'What to know of it; it becomes a finding all the same' }),
  })
  .meta({ id: 'ImportRow' });
export type ImportRow = z.infer<typeof importRow>;

export const surveyImport = z
  .object({
    id,
    surveyId: id,
    state: z.enum(importStates),
    fileName: z.string(),
    zipName: z.string().nullable(),
    remarks: z.array(z.string()).meta({ description: 'About the sheet as a whole' }),
    otherColumns: z
      .array(z.string())
      .meta({ description: 'Headings that we don’t know, whose cells hold something' }),
    rows: z
      .array(importRow)
      .meta({ description: 'What each row becomes; empty once it is being brought in' }),
    counts: z.object({
      rows: z.int(),
      findings: z.int().meta({ description: 'Findings to be made, or made' }),
      there: z.int().meta({ description: 'Rows that are findings of this survey already' }),
      leftOut: z.int().meta({ description: 'Rows that can’t become findings as they are' }),
      photos: z.int().meta({ description: 'Photos given' }),
      photosDone: z.int().meta({ description: 'Of these, taken or refused' }),
      photosNamed: z.int().meta({ description: 'Of these, named by a row' }),
    }),
    missingPhotos: z.array(z.string()).meta({ description: 'Named by a row, and not there' }),
    refusedPhotos: z.array(z.object({ name: z.string(), problem: z.string() })),
    problem: z.string().nullable().meta({ description: 'Why it failed, and what to do' }),
    createdAt: instant,
  })
  .meta({ id: 'SurveyImport' });
export type SurveyImportRecord = z.infer<typeof surveyImport>;

export const importPhotos = z.strictObject({
  items: z
    .array(
      z.strictObject({
        name: z.string().min(1).max(400).meta({
          description: 'As in the folder, with the names of folders inside it',
          example: 'deck/1.jpg',
        }),
        photoId: id
          .nullable()
          .default(null)
          .meta({ description: 'The photo of this survey that it became; null before it was uploaded' }),
        problem: z
          .string()
          .max(1000)
          .nullable()
          .default(null)
          .meta({ description: 'Why the upload was refused, to be told with the outcome' }),
      }),
    )
    .max(importLimits.photos, `At most ${importLimits.photos} photos at once; bring in the rest apart.`),
});

export const importStart = z.strictObject({
  leaveOutBadRows: z
    .boolean()
    .default(false)
    .meta({ description: 'Without it nothing is brought in while a row can’t become a finding' }),
  otherColumns: z
    .enum(['append', 'leave-out'])
    .default('append')
    .meta({ description: 'Columns that we don’t know: added to the end of what was seen, or left out' }),
});
