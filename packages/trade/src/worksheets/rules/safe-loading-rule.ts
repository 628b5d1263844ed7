import { settle } from '../core/units.ts';

/** Pounds in a cubic foot of fresh water, as boat builders reckon it. */
export const freshWater = 62.4;

/** Under this many pounds of persons the side-loading test decides too, 33 CFR 183.41(a)(2). */
export const sideTestLimit = 550;

type Rated = 'outboard' | 'up-to-2hp' | 'manual';

/**
 * Greatest weight of persons, motor and gear, lb: a fifth of what the boat can still carry for outboards (33 CFR
 * 183.35(a)), three tenths for oars and motors up to 2 hp (183.37(a)).
 */
export const weightCapacity = (boat: Rated, displacement: number, boatWeight: number): number =>
  settle(((displacement - boatWeight) * (boat === 'outboard' ? 2 : 3)) / 10);

/**
 * Greatest weight of persons by weight alone, lb: 33 CFR 183.41(a)(1) and 183.43(a). May be negative where motor and
 * gear take all.
 * @param equipment motor, controls, dry battery and full portable tank, lb; without it an outboard boat's isn't known
 */
export function untestedPersonsWeight(boat: Rated, capacity: number, equipment?: number): number | undefined {
  if (boat === 'manual') return settle(0.9 * capacity);
  if (boat === 'up-to-2hp') return settle(0.9 * capacity - 25);
  return equipment === undefined ? undefined : settle(capacity - equipment);
}

/** Weight of persons from the weight held along one side, lb: A/0.6, 33 CFR 183.41(a)(2)(iv). */
export const testedPersonsWeight = (sideWeight: number): number => settle(sideWeight / 0.6);

/** Whole persons for a weight of persons, lb: (P + 32)/141 to the nearest, halves up, 33 CFR 183.41(b), 183.43(b), (c). */
export const personsFromWeight = (personsWeight: number): number =>
  Math.floor(settle((personsWeight + 32) / 141 + 0.5));

/** Length × beam / 15 in feet, rounded down. Not the federal rule: taught by States for boats without a label. */
export const personsByRuleOfThumb = (length: number, beam: number): number =>
  Math.floor(settle((length * beam) / 15));
