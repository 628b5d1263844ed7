import { systems, verdicts, worksheetGroups } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { clientId, id, instant, line, pageQuery, versioned } from './common.ts';
import { worksheetOutputs, worksheetResult, worksheetSources } from './worksheet-result.ts';

const kindSummary = {
  kind: z.string().meta({ example: 'gas-leak-down' }),
  version: z.int().meta({ description: 'Rises whenever the same inputs could give another result' }),
  title: z.string(),
  group: z.enum(worksheetGroups),
  system: z.enum(systems),
  purpose: z.string(),
};

export const worksheetKindSummary = z.object(kindSummary).meta({ id: 'WorksheetKindSummary' });
export type WorksheetKindSummary = z.infer<typeof worksheetKindSummary>;

export const worksheetKind = z
  .object({
    ...kindSummary,
    inputs: z.record(z.string(), z.unknown()).meta({
      description:
        'JSON Schema (2020-12) of the inputs. `x-field` says what kind of field it is; measures have `x-unit` (of ' +
        'a bare number), `x-units` and limits in that unit',
    }),
    applicability: z.string(),
    cautions: z.array(z.string()),
    sources: worksheetSources,
  })
  .meta({ id: 'WorksheetKind' });
export type WorksheetKind = z.infer<typeof worksheetKind>;

export const worksheetKindParams = z.object({ kind: z.string().max(80) });

const inputs = z
  .record(z.string(), z.unknown(), { error: 'Give the inputs as a JSON object of fields.' })
  .meta({ description: 'By the JSON Schema of the kind' });

export const worksheetEvaluate = z.strictObject({ inputs });

const fields = {
  inputs,
  findingId: id.nullable().meta({ description: 'The finding that it measures' }),
  title: line(200).meta({ description: 'In the surveyor’s own words, such as “Port shaft at the bracket”' }),
  printed: z.boolean().meta({ description: 'Whether the next report prints it' }),
};
export const worksheetCreate = z.strictObject({
  id: clientId.optional(),
  kind: z.string().max(80),
  inputs: fields.inputs,
  findingId: fields.findingId.default(null),
  title: fields.title.optional().meta({ description: 'The title of the kind when left out' }),
  printed: fields.printed.default(true),
});
export const worksheetPatch = z.strictObject(fields).partial();

const kept = {
  id,
  surveyId: id,
  findingId: id.nullable(),
  kind: z.string(),
  title: z.string(),
  worksheetVersion: z.int().meta({ description: 'The version of the computation that gave the result' }),
  printed: z.boolean(),
  issued: z.boolean().meta({ description: 'Whether the latest issued report shows it' }),
  may: z.object({ edit: z.boolean() }).meta({ description: 'What the caller may do now' }),
  createdAt: instant,
  updatedAt: instant,
  ...versioned,
};

export const worksheet = z
  .object({
    ...kept,
    inputs: z
      .record(z.string(), z.unknown())
      .nullable()
      .meta({ description: 'As they were given; null for parties, who read the result as it was issued' }),
    result: worksheetResult,
    newer: z
      .object({
        version: z.int(),
        verdict: z.enum(verdicts),
        reasons: z.array(z.string()),
        differs: z.boolean().meta({ description: 'Whether its outputs or verdict differ from those kept' }),
      })
      .nullable()
      .meta({ description: 'What a newer version of the computation makes of the same inputs' }),
  })
  .meta({ id: 'Worksheet' });
export type Worksheet = z.infer<typeof worksheet>;

export const worksheetListed = z
  .object({
    ...kept,
    system: z.enum(systems),
    verdict: z.enum(verdicts),
    reasons: z.array(z.string()),
    outputs: worksheetOutputs,
    outdated: z.boolean().meta({ description: 'Whether a newer version of the computation exists' }),
  })
  .meta({ id: 'WorksheetListed' });
export type WorksheetListed = z.infer<typeof worksheetListed>;

export const worksheetQuery = pageQuery.extend({ findingId: id.optional() });

/** How a finding names the worksheets that belong to it. */
export const worksheetOfFinding = z.object({
  id,
  kind: z.string(),
  title: z.string(),
  verdict: z.enum(verdicts),
});
