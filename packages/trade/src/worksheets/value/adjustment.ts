import { z } from 'zod';
import { Money, moneyText } from '../core/money.ts';

/** A signed change to a price: an amount of money, or a share of the price it is applied to. */
export interface Adjustment {
  value: Money;
  /** True when `value` is in per cent. */
  share: boolean;
  /** As read by people: `+2,500` or `−3%`. */
  toString(): string;
}

const form = /^([+-]?\d{1,12}(?:\.\d{1,4})?)\s*(%?)$/;

function adjustmentOf(amount: string, percent: string): Adjustment {
  const value = new Money(amount);
  const share = percent === '%';
  const text = share ? shareText(value) : moneyText(value, '').trim();
  return { value, share, toString: () => (value.gt(0) ? `+${text}` : text) };
}

/** An adjustment as a field: `-2500`, or `-3%` of the price. Gives an {@link Adjustment}. */
export function adjustment({ label, help }: { label: string; help?: string }) {
  const how = `${label}: give an amount such as -2500, or a share of the price such as "-3%".`;
  return z
    .union([z.number(), z.string()], { error: how })
    .transform((given, context) => {
      const written = String(given).trim().replace('−', '-');
      const [, amount = '', percent = ''] = form.exec(written) ?? [];
      if (amount === '') {
        context.addIssue({ code: 'custom', message: how, input: given });
        return z.NEVER;
      }
      const made = adjustmentOf(amount, percent);
      if (made.share && made.value.abs().gt(100)) {
        const message = `${label} can’t be more than 100% of the price either way; ${written} was given.`;
        context.addIssue({ code: 'custom', message, input: given });
        return z.NEVER;
      }
      return made;
    })
    .meta({ title: label, ...(help ? { description: help } : {}), 'x-field': 'words' });
}

/** The adjustment in money, of a price. */
export const inMoney = (given: Adjustment, price: Money): Money =>
  given.share ? price.mul(given.value).div(100) : given.value;

/** A share in per cent as printed: `12.5%`, with a true minus. */
export const shareText = (percent: Money, decimals = 1): string =>
  `${percent.toDecimalPlaces(decimals).toString().replace('-', '−')}%`;
