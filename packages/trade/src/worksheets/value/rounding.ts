import { Money } from '../core/money.ts';

/**
 * The step a market quotes in: the largest of 1 or 5 times a power of ten that is at most a hundredth of the value,
 * so 500 for 87 300 and 1 000 for 250 000. Common practice, no source.
 */
export function marketStep(value: Money): Money {
  const hundredth = value.abs().div(100);
  if (hundredth.lt('0.01')) return new Money('0.01');
  const power = new Money(10).pow(hundredth.e);
  return hundredth.gte(power.mul(5)) ? power.mul(5) : power;
}

/** A value to the nearest step, halves upward. */
export const toStep = (value: Money, step: Money): Money =>
  value.div(step).toDecimalPlaces(0, Money.ROUND_HALF_UP).mul(step);

/** The lower end of a range, down to a step; the upper end, up to one. */
export const downToStep = (value: Money, step: Money): Money => value.div(step).floor().mul(step);
export const upToStep = (value: Money, step: Money): Money => value.div(step).ceil().mul(step);
