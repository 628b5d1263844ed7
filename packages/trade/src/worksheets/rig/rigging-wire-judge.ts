import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';

/** What the judging of a standing wire needs; loads in kN, shares in per cent, ages in years. */
export interface WireCase {
  fittedStrength: number;
  load?: number;
  factorNeeded: number;
  breaking: number;
  /** Breaking load that the displacement rule asks for. */
  ruleNeeds?: number;
  tensionShare?: number;
  tensionLow: number;
  tensionHigh: number;
  age?: number;
  ageAttention: number;
  ageLimit: number;
  brokenWires: Examined;
  terminalFault: Examined;
  /** Why the breaking load is not certain, if it is not. */
  doubt?: string;
}
type Examined = 'yes' | 'no' | 'not-examined';

const f = (value: number) => formatNumber(value, 3);

/** Strength over load, both in one unit, cleared of binary noise so that a factor met exactly is met. */
export const strengthOverLoad = (strength: number, load: number): number =>
  Number((strength / load).toPrecision(10));

function strength(c: WireCase): Judgement[] {
  const judged: Judgement[] = [];
  if (c.load !== undefined) {
    const factor = strengthOverLoad(c.fittedStrength, c.load);
    const enough = factor >= c.factorNeeded;
    judged.push({
      verdict: enough ? 'satisfactory' : 'unsatisfactory',
      reason: `As fitted the wire is ${f(factor)} times as strong as its greatest load; ${f(c.factorNeeded)} times is asked for in these waters.`,
    });
  }
  if (c.ruleNeeds !== undefined) {
    const enough = c.breaking >= c.ruleNeeds;
    judged.push({
      // A crude rule: it doesn't overrule a calculated load.
      verdict: enough ? 'satisfactory' : c.load === undefined ? 'unsatisfactory' : 'attention',
      reason: `By the displacement rule a shroud here should break at no less than ${f(c.ruleNeeds)} kN; this wire breaks at ${f(c.breaking)} kN.`,
    });
  }
  if (judged.length === 0) {
    judged.push({
      verdict: 'indeterminate',
      reason:
        'Neither a load nor the displacement was given, so whether the wire is strong enough is not judged.',
    });
  }
  return judged;
}

function tension(c: WireCase): Judgement[] {
  if (c.tensionShare === undefined) return [];
  const share = `${f(c.tensionShare)} % of its breaking load`;
  if (c.tensionShare > c.tensionHigh) {
    return [
      {
        verdict: 'unsatisfactory',
        reason: `Set up to ${share}, above the ${f(c.tensionHigh)} % ceiling: slacken it.`,
      },
    ];
  }
  if (c.tensionShare < c.tensionLow) {
    return [
      {
        verdict: 'attention',
        reason: `Set up to ${share}, below the usual ${f(c.tensionLow)} %: a slack wire snatches and tires.`,
      },
    ];
  }
  return [{ verdict: 'satisfactory', reason: `Set up to ${share}.` }];
}

function age(c: WireCase): Judgement[] {
  if (c.age === undefined) {
    return [{ verdict: 'attention', reason: 'The age of the wire is not known: ask for the invoice.' }];
  }
  if (c.age >= c.ageLimit) {
    return [
      {
        verdict: 'unsatisfactory',
        reason: `The wire is ${f(c.age)} years old; the limit taken is ${f(c.ageLimit)} years.`,
      },
    ];
  }
  if (c.age >= c.ageAttention) {
    return [
      {
        verdict: 'attention',
        reason: `The wire is ${f(c.age)} years old; many insurers ask for replacement from about ${f(c.ageAttention)} years.`,
      },
    ];
  }
  return [{ verdict: 'satisfactory', reason: `The wire is ${f(c.age)} years old.` }];
}

function seenFaults(found: Examined, fault: string, place: string): Judgement[] {
  if (found === 'yes') return [{ verdict: 'unsatisfactory', reason: fault }];
  return found === 'no' ? [] : [{ verdict: 'attention', reason: `${place} was not examined.` }];
}

/** Every point on which a standing wire is judged. */
export function judgeWire(c: WireCase): Judgement[] {
  return [
    ...seenFaults(
      c.brokenWires,
      'A wire of the strand is broken or cracked: replace this wire and its pair.',
      'The strand',
    ),
    ...seenFaults(
      c.terminalFault,
      'An end fitting is cracked, bent, or bleeding rust: replace the wire with its fittings.',
      'At least one end fitting',
    ),
    ...strength(c),
    ...tension(c),
    ...age(c),
    ...(c.doubt ? [{ verdict: 'attention' as const, reason: c.doubt }] : []),
  ];
}
