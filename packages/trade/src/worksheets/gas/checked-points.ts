import type { Verdict } from '../../vocabulary.ts';
import type { Judgement } from '../core/verdict.ts';

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

/** Judges a checklist: each no with its sentence, and all that was not examined in one. Says nothing of a yes. */
export function judgePoints(points: readonly CheckedPoint[]): Judgement[] {
  const unseen = points.filter((point) => point.answer === 'not-examined').map((point) => point.what);
  return [
    ...points
      .filter((point) => point.answer === 'no')
      .map((point): Judgement => ({ verdict: point.grave ?? 'unsatisfactory', reason: point.bad })),
    ...(unseen.length === 0
      ? []
      : [{ verdict: 'indeterminate', reason: `Not examined: ${unseen.join('; ')}.` } as const]),
  ];
}
