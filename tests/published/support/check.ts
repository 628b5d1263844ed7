import type { Verdict } from '@garboard/trade/vocabulary';
import type { Unit } from '@garboard/trade/worksheets/core/units';

/** A figure as a source prints it: met when the computed value rounds to it, to its own last digit. */
export interface Printed {
  printed: string;
  unit?: Unit;
}

/** Printed figures with their unit; the output is converted to it first. */
export const printed = (figure: string, unit?: Unit): Printed => ({
  printed: figure,
  ...(unit ? { unit } : {}),
});

/** A figure to be met within so much, for sources that round their inputs. Say why beside it. */
export const near = (value: number, within: number, unit?: Unit) => ({
  near: value,
  within,
  ...(unit ? { unit } : {}),
});

export type Expected = Printed | ReturnType<typeof near> | number | string | boolean | null;

/** One check of a worksheet against something outside it. */
export interface Check {
  /** What is checked, in a few words. */
  name: string;
  /** Document, section, table or page; for a figure of our own arithmetic, the formula and whose it is. */
  source: string;
  /**
   * `printed`: the figure stands in the source. `computed`: worked by hand or by another program from the source's
   * formula. `edge`: at the limit of a band, or just beside it.
   */
  basis: 'printed' | 'computed' | 'edge';
  inputs: Record<string, unknown>;
  /** Expected outputs by key. Plain numbers are met to nine digits. */
  outputs?: Record<string, Expected>;
  verdict?: Verdict;
  /** Fields whose refusal is expected instead of a result. */
  refused?: string[];
}

/** The checks of one worksheet. */
export interface CheckedWorksheet {
  kind: string;
  checks: Check[];
  /** What stays without a published check, and why; printed in DEVELOPERS.md. */
  unverified?: string[];
}
