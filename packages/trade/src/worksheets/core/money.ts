import { Decimal } from 'decimal.js';
import { z } from 'zod';

/** Money is counted in decimal, never in binary fractions. Its own precision, whatever others set. */
export const Money = Decimal.clone({ precision: 40, rounding: Decimal.ROUND_HALF_UP });
export type Money = Decimal;

const amountForm = /^-?\d{1,15}(\.\d{1,4})?$/;

/**
 * An amount of money in major units of the worksheet's currency: `"125000.50"`, or a number where that is exact
 * enough to write. Gives a decimal.
 */
export function money(spec: { label: string; help?: string; min?: number; max?: number }) {
  const how = `${spec.label}: give an amount such as 125000 or "125000.50".`;
  return z
    .union([z.number(), z.string()], { error: how })
    .transform((given, context) => {
      const written = typeof given === 'number' ? String(given) : given.trim();
      if (!amountForm.test(written)) {
        context.addIssue({ code: 'custom', message: how, input: given });
        return z.NEVER;
      }
      const amount = new Money(written);
      if (spec.min !== undefined && amount.lt(spec.min)) {
        const message = `${spec.label} must be at least ${spec.min}; ${written} was given.`;
        context.addIssue({ code: 'custom', message, input: given });
        return z.NEVER;
      }
      if (spec.max !== undefined && amount.gt(spec.max)) {
        const message = `${spec.label} can’t be more than ${spec.max}; ${written} was given.`;
        context.addIssue({ code: 'custom', message, input: given });
        return z.NEVER;
      }
      return amount;
    })
    .meta({
      title: spec.label,
      ...(spec.help ? { description: spec.help } : {}),
      'x-field': 'money',
      ...(spec.min === undefined ? {} : { 'x-min': spec.min }),
      ...(spec.max === undefined ? {} : { 'x-max': spec.max }),
    });
}

/** The currency of a worksheet's amounts, by its ISO 4217 letters. */
export const currency = () =>
  z
    .string({ error: 'Currency: give three letters such as EUR.' })
    .trim()
    .toUpperCase()
    .regex(/^[A-Z]{3}$/, 'Currency: give the three letters of ISO 4217, such as EUR.')
    .meta({ title: 'Currency', description: 'Three letters, ISO 4217', 'x-field': 'currency' });

/** An amount as printed: `USD 125,000`; decimals only where there are any. */
export function moneyText(amount: Money, currencyCode: string): string {
  const rounded = amount.toDecimalPlaces(2);
  const [whole = '0', cents] = rounded
    .abs()
    .toFixed(rounded.isInteger() ? 0 : 2)
    .split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${currencyCode} ${rounded.isNegative() && !rounded.isZero() ? '−' : ''}${grouped}${cents ? `.${cents}` : ''}`;
}
