import type { Verdict } from '../../vocabulary.ts';
import { checked, fallback } from '../core/fields.ts';
import type { Judgement } from '../core/verdict.ts';

/** A point of a checklist, which counts as not examined until it is answered. */
export const toCheck = (asked: { label: string; help?: string }) => fallback(checked(asked), 'not-examined');

/** One answer of a checklist and what it means. */
export interface CheckedPoint {
  answer: 'yes' | 'no' | 'not-examined';
  /** What was to be looked at, as the end of “Not examined: …”. */
  what: string;
  /** What is said when the answer is no. */
  bad: string;
  /** How grave a no is; `unsatisfactory` unless told. */
  grave?: Verdict;
}

/**
 * Judges a checklist: each no with its sentence, and all that was not examined together, as grave as a no would make
 * it. Says nothing of a yes.
 */
export function judgePoints(points: readonly CheckedPoint[]): Judgement[] {
  const unseen = (deciding: boolean) =>
    points
      .filter((p) => p.answer === 'not-examined' && (p.grave !== 'attention') === deciding)
      .map((p) => p.what);
  const notExamined = (verdict: Verdict, what: string[]): Judgement[] =>
    what.length === 0 ? [] : [{ verdict, reason: `Not examined: ${what.join('; ')}.` }];
  return [
    ...points
      .filter((point) => point.answer === 'no')
      .map((point): Judgement => ({ verdict: point.grave ?? 'unsatisfactory', reason: point.bad })),
    ...notExamined('indeterminate', unseen(true)),
    ...notExamined('attention', unseen(false)),
  ];
}
