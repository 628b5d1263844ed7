import type { Verdict } from '../../vocabulary.ts';

/** Worst first; what can't be judged outweighs attention, not a plain failure. */
const order: Verdict[] = ['unsatisfactory', 'indeterminate', 'attention', 'satisfactory'];

/** The verdict of the whole from those of its parts; `indeterminate` when there are none. */
export const worst = (verdicts: readonly Verdict[]): Verdict =>
  order.find((verdict) => verdicts.includes(verdict)) ?? 'indeterminate';

/** One judged point: what it says about the verdict, in a sentence. */
export interface Judgement {
  verdict: Verdict;
  reason: string;
}

/** Gathers judgements into one verdict and the reasons for it, the gravest first. */
export function conclude(judgements: readonly Judgement[]): { verdict: Verdict; reasons: string[] } {
  const sorted = [...judgements].sort((a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict));
  return { verdict: worst(judgements.map((j) => j.verdict)), reasons: sorted.map((j) => j.reason) };
}
