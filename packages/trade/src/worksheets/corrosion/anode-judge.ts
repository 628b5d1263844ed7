import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import type { Asked } from './anode-inputs.ts';
import type { Worked } from './anode-work.ts';

const months = (value: number) => `${formatNumber(value, 2)} months`;
const per = (value: number) => `${formatNumber(value, 3)}%`;

/** From here an anode that shows no wasting is suspect, months: our choice. */
const idleFrom = 6;

function judgeWear(v: Asked, { wear }: Worked): Judgement[] {
  if (!wear) return [];
  if (wear.wasted >= wear.renewAt) {
    const reason = `The anodes are ${per(wear.wasted)} wasted; they are renewed at ${per(wear.renewAt)}.`;
    return [{ verdict: 'unsatisfactory', reason }];
  }
  const next = v.untilNext.in('month');
  if (wear.months === undefined) {
    const reason = `The anodes are ${per(wear.wasted)} wasted, less than the ${per(wear.renewAt)} at which they are renewed; how long they last can’t be told without the time since they were fitted.`;
    return [{ verdict: 'attention', reason }];
  }
  if (!wear.told) {
    const idle = wear.months >= idleFrom;
    const reason = `No wasting that can be told within ${per(wear.within)} after ${months(wear.months)}${
      idle ? ': they may be painted, badly connected or passive, and protect nothing' : ''
    }.`;
    return [{ verdict: idle ? 'attention' : 'satisfactory', reason }];
  }
  const left = wear.timeLeft ?? 0;
  const least = wear.timeLeftAtLeast ?? 0;
  const told = `${per(wear.wasted)} went in ${months(wear.months)}: at that rate they are due in ${months(left)}`;
  if (left < next) {
    return [{ verdict: 'attention', reason: `${told}, before the next haul-out in ${months(next)}.` }];
  }
  if (least < next) {
    const reason = `${told}, but it may be ${months(least)}, before the next haul-out in ${months(next)}.`;
    return [{ verdict: 'attention', reason }];
  }
  return [{ verdict: 'satisfactory', reason: `${told}; the next haul-out is in ${months(next)}.` }];
}

function judgeMass({ need, years, fitted }: Worked): Judgement[] {
  if (!need || need.monthsLeft === null) return [];
  const wanted = years * 12;
  const enough = need.monthsLeft >= wanted * (1 - 1e-9);
  const reason = `At the current needed the ${formatNumber(fitted, 3)} kg fitted last ${months(need.monthsLeft)} more; ${months(wanted)} are wanted.`;
  return [{ verdict: enough ? 'satisfactory' : 'attention', reason }];
}

function judgeOne(when: string, total: number | null, needed: number): Judgement[] {
  if (total === null) return [];
  const enough = total >= needed * (1 - 1e-9);
  const reason = `${when} the anodes can give ${formatNumber(total, 3)} A together; ${formatNumber(needed, 3)} A are needed${enough ? '' : ': read the hull potential'}.`;
  return [{ verdict: enough ? 'satisfactory' : 'attention', reason }];
}

function judgeOutput(v: Asked, { output, demand }: Worked): Judgement[] {
  if (!output) return [];
  if (output.resistance === null) {
    const reason = `The anode stands off only ${v.standOff?.text()}: below 150 mm the formula for slender anodes does not hold.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  if (output.driving === null) {
    const reason = 'The current can’t be told without the working potential of the anode.';
    return [{ verdict: 'indeterminate', reason }];
  }
  if (!demand) {
    const reason = `One anode gives ${formatNumber(output.current ?? 0, 3)} A when new; what is needed was not given.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  const all = (each: number | null) => (each === null ? null : v.count * each);
  return [
    ...judgeOne('New,', all(output.current), demand.initial),
    ...judgeOne('At their end', all(output.currentAtEnd), demand.final),
  ];
}

/** Judges what is wasted, what alloy is left and what current they can give. */
export const judgeAnodes = (v: Asked, worked: Worked): Judgement[] => [
  ...judgeWear(v, worked),
  ...judgeMass(worked),
  ...judgeOutput(v, worked),
];
