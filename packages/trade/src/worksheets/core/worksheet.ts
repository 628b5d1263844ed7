import type { z } from 'zod';
import type { Drawing } from '../../drawing/svg.ts';
import type { System, Verdict, WorksheetGroup } from '../../vocabulary.ts';
import type { Output, ResultTable } from './outputs.ts';

export type FieldSet = Record<string, z.ZodType>;
/** What compute gets: measures as Quantity, amounts as decimals, the rest as given. */
export type Values<Fields extends FieldSet> = { [K in keyof Fields]: z.output<Fields[K]> };

/**
 * Where a formula, limit or table comes from. `printed`: seen in the document named; `secondary`: seen in another's
 * print of it; `memory`: not seen, so said to the reader; `practice`: common practice, no source.
 */
export interface Source {
  citation: string;
  standing: 'printed' | 'secondary' | 'memory' | 'practice';
  /** What was taken from it, or what the reader should know of it. */
  note?: string;
}

/** An input that is possible by itself and impossible with the others. */
export interface InputProblem {
  /** Path of the field: `readings/3/depth`. */
  field: string;
  /** A sentence naming the field and the limit. */
  message: string;
}

/** What a computation gives back. */
export interface Computed {
  outputs: Record<string, Output>;
  verdict: Verdict;
  /** Why the verdict, in sentences, the gravest first. */
  reasons: string[];
  /** Formula, numbers put in, result: as written on paper. */
  working: string[];
  tables?: ResultTable[];
  /** Further cautions that these inputs call for. */
  cautions?: string[];
}

/** Pure and synchronous: the same inputs give the same result, for years. */
export interface Worksheet<Fields extends FieldSet = FieldSet, Result extends Computed = Computed> {
  /** Stable key: `gas-leak-down`. */
  kind: string;
  /** Raised whenever the same inputs could give another result. */
  version: number;
  title: string;
  group: WorksheetGroup;
  system: System;
  /** What it tells, in a sentence or two. */
  purpose: string;
  inputs: Fields;
  /** Inputs that contradict each other: these are refused. */
  refuse?: (values: Values<Fields>) => InputProblem[];
  /** Which boats, ranges and conditions the source covers, in a sentence or two. */
  applicability: string;
  /** Why these inputs are outside what the source covers, if they are: the verdict is then `indeterminate`. */
  outside?: (values: Values<Fields>) => string | undefined;
  compute: (values: Values<Fields>) => Result;
  /** Maps and charts that belong to it. */
  draw?: (values: Values<Fields>, result: Result) => Drawing[];
  /** The hazards of measuring, deferring to the licensed trade and local code. At least one. */
  cautions: [string, ...string[]];
  sources: [Source, ...Source[]];
}

/** Keeps the types of a worksheet's fields and results together; evaluation needs neither. */
export function defineWorksheet<Fields extends FieldSet, Result extends Computed>(
  worksheet: Worksheet<Fields, Result>,
): Worksheet<Fields, Result> {
  return worksheet;
}

/** A worksheet of any fields, as the registry holds them. */
export type AnyWorksheet = Pick<
  Worksheet,
  | 'kind'
  | 'version'
  | 'title'
  | 'group'
  | 'system'
  | 'purpose'
  | 'inputs'
  | 'applicability'
  | 'cautions'
  | 'sources'
> & {
  // Written as methods: their parameters are checked by the worksheet itself, not by who holds it.
  refuse?(values: never): InputProblem[];
  outside?(values: never): string | undefined;
  compute(values: never): Computed;
  draw?(values: never, result: never): Drawing[];
};
