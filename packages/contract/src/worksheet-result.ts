import { systems, verdicts } from '@garboard/trade/vocabulary';
// A type only: the computations themselves must stay out of what a browser loads.
import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { z } from 'zod';

const output = z.object({
  label: z.string(),
  value: z
    .union([z.number(), z.string(), z.boolean()])
    .nullable()
    .meta({ description: 'For programs; an amount of money as a decimal string. Null: not determined' }),
  unit: z.string().optional().meta({ description: 'Of a number; the currency of an amount' }),
  text: z.string().meta({ description: 'For people' }),
});

const columnsAndRows = { columns: z.array(z.string()), rows: z.array(z.array(z.string())) };

export const worksheetOutputs = z
  .record(z.string(), output)
  .meta({ description: 'By stable key, in the order in which they are read' });

export const worksheetSources = z.array(
  z.object({
    citation: z.string(),
    standing: z.enum(['printed', 'secondary', 'memory', 'practice']).meta({
      description:
        'Seen in the document itself, in another’s print of it, not seen, or common practice without a source',
    }),
    note: z.string().optional(),
  }),
);

/** A worked worksheet, complete by itself: what is shown, kept and printed. */
export const worksheetResult = z
  .object({
    kind: z.string(),
    version: z.int().meta({ description: 'Of the computation' }),
    title: z.string(),
    system: z.enum(systems),
    inputs: z
      .array(
        z.object({
          key: z.string(),
          label: z.string(),
          text: z.string(),
          table: z.object(columnsAndRows).optional(),
        }),
      )
      .meta({ description: 'The inputs as understood, in words' }),
    outputs: worksheetOutputs,
    tables: z.array(z.object({ title: z.string(), ...columnsAndRows })),
    verdict: z.enum(verdicts),
    reasons: z.array(z.string()).meta({ description: 'Why the verdict, the gravest first' }),
    working: z.array(z.string()).meta({ description: 'Formula, numbers put in, result' }),
    drawings: z.array(
      z.object({
        key: z.string(),
        title: z.string(),
        description: z.string(),
        width: z.number(),
        height: z.number(),
        svg: z.string(),
      }),
    ),
    cautions: z.array(z.string()),
    sources: worksheetSources,
    applicability: z.string(),
  })
  .meta({ id: 'WorksheetResult' }) satisfies z.ZodType<WorksheetResult, WorksheetResult>;
