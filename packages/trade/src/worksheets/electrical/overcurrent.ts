import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';

/** NEC 240.6(A): standard ratings of fuses and breakers up to 800 A, with the smaller ones for fuses. */
const standardRatings = [
  1, 3, 6, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300,
  350, 400, 450, 500, 600, 700, 800,
];

/**
 * Largest rating allowed, A: 150% below 50 V; from 50 V the amperes themselves, or the next standard size above them
 * if that is at most 150%. 33 CFR 183.455(c).
 * @param amperes what the conductor may carry, A
 */
export function largestGuard(amperes: number, below50V: boolean): number {
  const most = 1.5 * amperes;
  if (below50V) return most;
  const next = standardRatings.find((rating) => rating >= amperes * (1 - 1e-12));
  return next !== undefined && next <= most ? Math.max(next, amperes) : amperes;
}

/** A fuse or breaker as found. Ratings in A and V, distance from the source in inches along the conductor. */
export interface Guard {
  fitted: 'yes' | 'no' | 'not-examined';
  enclosed: 'yes' | 'no' | 'not-examined';
  volts: number;
  rating?: number;
  voltageRating?: number;
  distance?: number;
}

function judgeRating(rating: number | undefined, largest: number): Judgement {
  if (rating === undefined) {
    const reason = `The rating of the fuse or breaker was not given; the most is ${formatNumber(largest, 5)} A.`;
    return { verdict: 'indeterminate', reason };
  }
  const within = rating <= largest * (1 + 1e-12);
  const reason = `The fuse or breaker is of ${formatNumber(rating, 5)} A; the most for this conductor is ${formatNumber(largest, 5)} A.`;
  return { verdict: within ? 'satisfactory' : 'unsatisfactory', reason };
}

/** 33 CFR 183.455(b): at the source, else within 7 in, else within 40 in when enclosed all the way. */
function judgePlace({ distance, enclosed }: Guard): Judgement {
  if (distance === undefined) {
    return {
      verdict: 'indeterminate',
      reason: 'How far the fuse or breaker is from the source of power was not given.',
    };
  }
  const at = `${formatNumber(distance)} in from the source of power`;
  if (distance === 0) {
    return { verdict: 'satisfactory', reason: 'The fuse or breaker is at the source of power.' };
  }
  if (distance <= 7) {
    const reason = `The fuse or breaker is ${at}: allowed up to 7 in where it can’t be put at the source.`;
    return { verdict: 'satisfactory', reason };
  }
  if (distance > 40) {
    const reason = `The fuse or breaker is ${at}; 7 in is the most, or 40 in when enclosed all the way.`;
    return { verdict: 'unsatisfactory', reason };
  }
  if (enclosed === 'yes') {
    const reason = `The fuse or breaker is ${at}, enclosed: allowed up to 40 in where it can’t be put nearer.`;
    return { verdict: 'satisfactory', reason };
  }
  return enclosed === 'no'
    ? {
        verdict: 'unsatisfactory',
        reason: `The fuse or breaker is ${at} and not enclosed; 7 in is the most without an enclosure.`,
      }
    : {
        verdict: 'indeterminate',
        reason: `The fuse or breaker is ${at}: allowed up to 40 in only when enclosed all the way, which was not examined.`,
      };
}

/** Judges a fuse or breaker. @param largest rating allowed, A. */
export function judgeGuard(guard: Guard, largest: number): Judgement[] {
  if (guard.fitted === 'no') {
    return [
      { verdict: 'unsatisfactory', reason: 'There is no fuse or breaker in the ungrounded conductor.' },
    ];
  }
  if (guard.fitted === 'not-examined') {
    return [
      {
        verdict: 'indeterminate',
        reason: 'Whether a fuse or breaker protects the conductor was not examined.',
      },
    ];
  }
  const judgements = [judgeRating(guard.rating, largest), judgePlace(guard)];
  if (guard.voltageRating !== undefined && guard.voltageRating < guard.volts) {
    judgements.push({
      verdict: 'unsatisfactory',
      reason: `The fuse or breaker is rated ${formatNumber(guard.voltageRating)} V, less than the circuit’s ${formatNumber(guard.volts)} V: it may not break the current.`,
    });
  }
  return judgements;
}
