import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';

/** Two metals as found. Differences and limit in mV; ratio is cathode area over anode area. */
export interface FoundCouple {
  anode: string;
  cathode: string;
  least: number;
  greatest: number;
  limit: number;
  electrolyte: 'sea' | 'brackish' | 'spray' | 'fresh' | 'dry';
  joined: 'yes' | 'no' | 'not-examined';
  sacrificial: boolean;
  smallRatio: number;
  largeRatio: number;
  ratio?: number;
  /** mm a year, from a measured current. */
  rate?: number;
}

const f = (value: number) => formatNumber(value, 3);

/** A metal's words inside a sentence. */
const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);

function judgeWet(found: FoundCouple): Judgement {
  const { anode, cathode, least, greatest, limit, ratio, electrolyte } = found;
  const told = `${anode} and ${lower(cathode)} differ by ${f(least)} to ${f(greatest)} mV`;
  if (greatest <= limit) {
    return {
      verdict: 'satisfactory',
      reason: `${told}; up to ${f(limit)} mV the one hardly harms the other.`,
    };
  }
  if (least <= limit) {
    const reason = `${told}: depending on alloy and water that may pass the ${f(limit)} mV from which ${lower(anode)} is attacked.`;
    return { verdict: 'attention', reason };
  }
  const attacked = `${told}, more than ${f(limit)} mV: ${lower(anode)} is attacked`;
  if (electrolyte === 'spray') {
    const reason = `${attacked} where the joint stays wet. Insulate it, or seal water out.`;
    return { verdict: 'attention', reason };
  }
  if (ratio === undefined) {
    return { verdict: 'unsatisfactory', reason: `${attacked}; the areas were not given.` };
  }
  const areas = `with ${f(ratio)} times as much ${lower(cathode)} as ${lower(anode)}`;
  if (ratio <= found.smallRatio) {
    return { verdict: 'attention', reason: `${attacked}, but ${areas} slowly.` };
  }
  return {
    verdict: 'unsatisfactory',
    reason: `${attacked}, ${areas}${ratio >= found.largeRatio ? ' fast and deep' : ''}.`,
  };
}

/** Rates of attack by a measured current, mm a year: limits of low, moderate and high. */
export const rateBands = [0.025, 0.125, 0.25] as const;

function judgeRate({ rate, anode }: FoundCouple): Judgement[] {
  if (rate === undefined) return [];
  const [low, moderate, high] = rateBands;
  const told = `The current measured eats ${formatNumber(rate, 2)} mm a year off ${lower(anode)}, if evenly; pits go deeper`;
  if (rate < low) return [{ verdict: 'satisfactory', reason: `${told}. That is low.` }];
  if (rate > high) return [{ verdict: 'unsatisfactory', reason: `${told}. That is very high.` }];
  return [{ verdict: 'attention', reason: `${told}. That is ${rate <= moderate ? 'moderate' : 'high'}.` }];
}

/** Judges a couple by difference, areas, water and contact, and by the current if it was measured. */
export function judgeCouple(found: FoundCouple): Judgement[] {
  const { electrolyte, joined, anode, cathode } = found;
  if (electrolyte === 'dry') {
    return [
      {
        verdict: 'satisfactory',
        reason: 'Without water between them there is no galvanic current, while they stay dry.',
      },
    ];
  }
  if (joined === 'no') {
    return [
      {
        verdict: 'satisfactory',
        reason: `${anode} and ${lower(cathode)} are not joined: no galvanic current flows.`,
      },
    ];
  }
  if (found.sacrificial) {
    const reason = `${anode} is there to be eaten away, and protects ${lower(cathode)}. Whether it lasts is for the anode worksheet.`;
    return [{ verdict: 'satisfactory', reason }];
  }
  const wet = judgeWet(found);
  if (electrolyte === 'fresh') {
    const reason = `The series is of sea water; in fresh water its order may change, and attack stays near the joint. By the series: ${wet.reason}`;
    return [{ verdict: 'indeterminate', reason }, ...judgeRate(found)];
  }
  if (joined === 'not-examined' && wet.verdict !== 'satisfactory') {
    const reason = `Whether the two are joined by metal was not examined. If they are: ${wet.reason}`;
    return [{ verdict: 'indeterminate', reason }, ...judgeRate(found)];
  }
  return [wet, ...judgeRate(found)];
}
