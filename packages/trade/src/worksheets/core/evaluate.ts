import { z } from 'zod';
import type { Drawing } from '../../drawing/svg.ts';
import type { System, Verdict } from '../../vocabulary.ts';
import type { Output, ResultTable } from './outputs.ts';
import { rowColumns, type ShownInput, showInputs, unwrapped } from './shown-inputs.ts';
import type { AnyWorksheet, Computed, InputProblem, Source } from './worksheet.ts';

/** A worked worksheet, complete by itself: what is kept, shown and printed. */
export interface WorksheetResult {
  kind: string;
  version: number;
  title: string;
  system: System;
  /** The inputs as understood, in words. */
  inputs: ShownInput[];
  outputs: Record<string, Output>;
  tables: ResultTable[];
  verdict: Verdict;
  reasons: string[];
  working: string[];
  drawings: Drawing[];
  cautions: string[];
  sources: Source[];
  applicability: string;
}

/** Inputs that can't be worked with, each with the field and what to do. */
export class InputsRefused extends Error {
  readonly problems: InputProblem[];

  constructor(problems: InputProblem[]) {
    super(problems.map((p) => p.message).join(' '));
    this.name = 'InputsRefused';
    this.problems = problems;
  }
}

const schemas = new WeakMap<AnyWorksheet, z.ZodType<Record<string, unknown>>>();

/** The whole of a worksheet's inputs as one schema. Unknown fields are refused. */
export function inputSchema(worksheet: AnyWorksheet): z.ZodType<Record<string, unknown>> {
  let schema = schemas.get(worksheet);
  if (!schema) {
    schema = z.strictObject(worksheet.inputs);
    schemas.set(worksheet, schema);
  }
  return schema;
}

/** The words a form would show for a field: `Readings in between, row 2: Pressure`. */
function labelFor(worksheet: AnyWorksheet, path: readonly PropertyKey[]): string {
  const top = worksheet.inputs[String(path[0])];
  if (!top) return path.map(String).join('/');
  const label = unwrapped(top).meta()?.title ?? String(path[0]);
  const row = path.find((part) => typeof part === 'number');
  if (row === undefined) return label;
  const column = path.at(-1);
  const columnField = typeof column === 'string' ? rowColumns(top)[column] : undefined;
  const columnLabel = columnField ? unwrapped(columnField).meta()?.title : undefined;
  return `${label}, row ${Number(row) + 1}${columnLabel ? `: ${columnLabel}` : ''}`;
}

function problemsOf(worksheet: AnyWorksheet, error: z.ZodError): InputProblem[] {
  return error.issues.flatMap((issue): InputProblem[] => {
    const field = issue.path.map(String).join('/');
    if (issue.code === 'unrecognized_keys') {
      const known = Object.keys(worksheet.inputs).join(', ');
      const where = field ? ` in ${labelFor(worksheet, issue.path)}` : `; the fields are ${known}`;
      return issue.keys.map((key) => ({
        field: field ? `${field}/${key}` : key,
        message: `There is no field “${key}”${where}.`,
      }));
    }
    if (issue.input === undefined && issue.path.length > 0 && issue.code !== 'custom') {
      return [{ field, message: `${labelFor(worksheet, issue.path)} must be given.` }];
    }
    if (issue.path.length === 0) return [{ field, message: 'Give the inputs as a JSON object of fields.' }];
    const row = issue.path.find((part) => typeof part === 'number');
    const place =
      row === undefined ? '' : `${labelFor(worksheet, issue.path.slice(0, 1))}, row ${Number(row) + 1}: `;
    return [{ field, message: place + issue.message }];
  });
}

const notJudged = (reason: string): Computed => ({
  outputs: {},
  verdict: 'indeterminate',
  reasons: [reason],
  working: [],
});

/**
 * Works a worksheet: refuses impossible inputs, answers `indeterminate` outside what the source covers, computes
 * and draws otherwise. Pure.
 * @param inputs as they come from JSON
 * @throws InputsRefused
 */
export function evaluate(worksheet: AnyWorksheet, inputs: unknown): WorksheetResult {
  const parsed = inputSchema(worksheet).safeParse(inputs, { reportInput: true });
  if (!parsed.success) throw new InputsRefused(problemsOf(worksheet, parsed.error));
  // The schema that made these values is the worksheet's own.
  const values = parsed.data as never;
  const contradictions = worksheet.refuse?.(values) ?? [];
  if (contradictions.length > 0) throw new InputsRefused(contradictions);
  const reason = worksheet.outside?.(values);
  const computed = reason === undefined ? worksheet.compute(values) : notJudged(reason);
  const drawings = reason === undefined ? (worksheet.draw?.(values, computed as never) ?? []) : [];
  return {
    kind: worksheet.kind,
    version: worksheet.version,
    title: worksheet.title,
    system: worksheet.system,
    inputs: showInputs(worksheet.inputs, parsed.data),
    outputs: computed.outputs,
    tables: computed.tables ?? [],
    verdict: computed.verdict,
    reasons: computed.reasons,
    working: computed.working,
    drawings,
    cautions: [...worksheet.cautions, ...(computed.cautions ?? [])],
    sources: worksheet.sources,
    applicability: worksheet.applicability,
  };
}
