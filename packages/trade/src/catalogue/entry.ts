import type { Harm, System, Urgency } from '../vocabulary.ts';

/**
 * A known defect, as the trade knows it: what to look for, how to say it, why it matters and what to do. The texts
 * are a starting point for a finding; the surveyor completes the slots and edits freely.
 */
export interface CatalogueEntry {
  /** Stable: findings refer to it. Lower case words joined by hyphens, the system's matter first. */
  key: string;
  system: System;
  /** As it would be said on the telephone. */
  title: string;
  /** Where to look and how to test, for the surveyor aboard. */
  lookFor: string;
  /** What was seen, with slots such as `{location}`; see `slots.ts`. */
  observed: string;
  /** Why it matters. */
  consequence: string;
  /** How to put it right. */
  recommendation: string;
  urgency: Urgency;
  /** Only with `within-days`. */
  withinDays?: number;
  /** When it is more urgent than that. */
  raise?: string;
  /** When it is less urgent than that. */
  lower?: string;
  harms: [Harm, ...Harm[]];
  /** Standards and regulations by designation. Those not seen by us are cited without any clause or figure. */
  references: string[];
  /** Worksheets that measure it, by kind. */
  worksheets: string[];
  /** What can hurt while testing; at least one where the system is gas, fuel, AC or the boat is lifted. */
  cautions: string[];
  /** Entries to inspect also, by key. */
  related: string[];
  /** A drawing of it as found and as it should be, by its key in `diagrams/`. */
  diagram?: string;
  /** Other words people use for it, for the search. */
  alsoCalled?: string[];
}

/** Entries of one file, typed without losing their keys. */
export const entries = (...list: CatalogueEntry[]): readonly CatalogueEntry[] => list;
