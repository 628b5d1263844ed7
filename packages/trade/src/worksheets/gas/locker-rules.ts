import type { Quantity } from '../core/quantity.ts';
import type { Unit } from '../core/units.ts';

/** A limit in the unit its source prints it in. */
export interface PrintedLimit {
  value: number;
  unit: Unit;
}

/** What a rule asks of a gas cylinder locker's drain; absent where the rule, as we saw it, gives no figure. */
export interface LockerRule {
  name: string;
  /** Least inside diameter of the drain. */
  bore: PrintedLimit;
  /** Least height of the outlet above the waterline at rest, fully loaded; `above` when it must only be above it. */
  height: PrintedLimit | 'above';
  /** Least distance of the outlet from any opening into the boat. */
  distance?: PrintedLimit;
  /** Whether the lid must have a gasket and a latch. */
  gasket: boolean;
}

export const lockerRules = {
  'iso-10239': {
    name: 'ISO 10239',
    bore: { value: 19, unit: 'mm' },
    height: { value: 75, unit: 'mm' },
    distance: { value: 500, unit: 'mm' },
    gasket: false,
  },
  'abyc-a1': {
    name: 'ABYC A-1',
    bore: { value: 0.5, unit: 'in' },
    height: 'above',
    distance: { value: 20, unit: 'in' },
    gasket: true,
  },
  'uk-inland': {
    name: 'UK inland waterways, part 7',
    bore: { value: 19, unit: 'mm' },
    height: 'above',
    gasket: false,
  },
} as const satisfies Record<string, LockerRule>;

export type LockerRuleKey = keyof typeof lockerRules;

/** UK inland waterways, part 7 (7.5): smaller drains allowed on boats built before 2000 with little gas. */
export const olderBoats = { bore: 12, gas: 15 };

/** The least drain bore, or why it can't be told. */
export function boreNeeded(
  rule: LockerRuleKey,
  before2000: 'yes' | 'no' | 'not-examined',
  gas: Quantity | undefined,
): PrintedLimit | { unknown: string; atLeast: PrintedLimit } {
  const { bore } = lockerRules[rule];
  if (rule !== 'uk-inland' || before2000 === 'no') return bore;
  const small: PrintedLimit = { value: olderBoats.bore, unit: 'mm' };
  if (before2000 === 'not-examined')
    return { unknown: 'whether the boat was built before 3 January 2000 is not known', atLeast: small };
  if (!gas) return { unknown: 'the mass of gas carried was not given', atLeast: small };
  if (gas.in('kg') <= olderBoats.gas) return small;
  return {
    unknown: `more than ${olderBoats.gas} kg of gas asks for a larger drain in proportion, which the rule as we saw it doesn’t spell out`,
    atLeast: small,
  };
}
