import { Money } from '../core/money.ts';
import { inMoney } from './adjustment.ts';
import type { Inputs, Sale } from './comparable-sales-inputs.ts';
import { sum } from './decimal-statistics.ts';

/** One sale carried to the boat surveyed and the date of the value. Amounts in the worksheet's currency. */
export interface Adjusted {
  /** Place in the list, from 1. */
  number: number;
  sale: Sale;
  /** What each element changed, in the order applied. */
  steps: Array<{ key: Element; amount: Money }>;
  /** Price after what belongs to the deal and its date; shares for the boat itself are taken of it. */
  dated: Money;
  price: Money;
  /** Sum of the changes, and of their sizes, in per cent of the price paid. */
  net: Money;
  gross: Money;
}

/** What a sale can differ in: first the deal and its date, each on the price after the one before, then the boat. */
export const elements = {
  asking: 'asking price',
  terms: 'terms',
  outlay: 'spent at once',
  time: 'time',
  location: 'location',
  condition: 'condition',
  equipment: 'equipment',
} as const;
export type Element = keyof typeof elements;

const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000;

/** Market change from the sale to the date of the value: price · r/100 · days / 365.25, not compounded. */
function marketTime(price: Money, yearly: Money, from: string, to: string): Money {
  return price
    .mul(yearly)
    .div(100)
    .mul(dayNumber(to) - dayNumber(from))
    .div('365.25');
}

/** Carries one sale over. */
export function adjustSale(sale: Sale, number: number, v: Inputs): Adjusted {
  const steps: Adjusted['steps'] = [];
  let running = sale.price;
  const step = (key: Element, amount: Money) => {
    if (amount.isZero()) return;
    steps.push({ key, amount });
    running = running.add(amount);
  };
  if (sale.basis === 'asking') step('asking', running.mul(v.askingGap?.in('%') ?? 0).div(-100));
  if (sale.terms) step('terms', inMoney(sale.terms, running));
  if (sale.outlay) step('outlay', inMoney(sale.outlay, running));
  const yearly = new Money(v.marketChange.in('%'));
  step('time', sale.time ? inMoney(sale.time, running) : marketTime(running, yearly, sale.date, v.valueOn));
  const dated = running;
  for (const key of ['location', 'condition', 'equipment'] as const) {
    if (sale[key]) step(key, inMoney(sale[key], dated));
  }
  const shareOfPrice = (amount: Money) => amount.mul(100).div(sale.price);
  return {
    number,
    sale,
    steps,
    dated,
    price: running,
    net: shareOfPrice(running.sub(sale.price)),
    gross: shareOfPrice(sum(steps.map((s) => s.amount.abs()))),
  };
}

const carried = new WeakMap<Inputs, readonly Adjusted[]>();

/** Carries every sale over, once for each set of inputs: refusing, working and drawing all need them. */
export function adjustAll(v: Inputs): readonly Adjusted[] {
  const known = carried.get(v);
  if (known) return known;
  const made = v.sales.map((s, i) => adjustSale(s, i + 1, v));
  carried.set(v, made);
  return made;
}

/** The sales that count: those not left out. */
export const counted = (all: readonly Adjusted[]): Adjusted[] => all.filter((a) => !a.sale.leftOut);

/** Fewest sales among which one can be called an outlier. Our choice; fewer tell too little. */
export const fewestForOutliers = 7;
/** Iglewicz and Hoaglin's limit for a potential outlier. */
export const outlierLimit = '3.5';

/**
 * Weights in per cent, adding up to 100, of the counted sales. `least-adjusted`: as one over the gross adjustment,
 * which is taken as at least 5 per cent so that an unadjusted sale is not everything (our choice).
 */
export function weightsOf(used: readonly Adjusted[], method: Inputs['method']): Money[] | undefined {
  if (method === 'own') return used.map((a) => new Money(a.sale.weight?.in('%') ?? 0));
  if (method !== 'least-adjusted') return undefined;
  const raw = used.map((a) => new Money(1).div(Money.max(a.gross, 5)));
  const total = sum(raw);
  return raw.map((w) => w.mul(100).div(total));
}
