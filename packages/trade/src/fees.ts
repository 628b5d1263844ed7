import { decimalsOf } from './costs.ts';

/** What a survey is charged by: amounts in minor units of one currency, the tax rate in thousandths of a percent. */
export interface Rates {
  currency: string;
  /** For each metre or foot of length overall. */
  perLength: number;
  lengthUnit: 'm' | 'ft';
  perHour: number;
  perDistance: number;
  distanceUnit: 'km' | 'mile';
  /** The least that length and hours come to together. */
  minimum: number;
  taxRate: number;
}

/** What the firm will do, as far as it is charged. */
export interface FeeBasis {
  /** Length overall in metres; left out when the length isn’t charged. */
  lengthM?: number | undefined;
  hours?: number | undefined;
  /** There and back, in the firm’s unit of distance. */
  distance?: number | undefined;
}

/** A line of a quotation or an invoice, before it is reckoned. */
export interface LineInput {
  text: string;
  /** In thousandths of the unit, so that 11.28 m is 11280. */
  quantity: number;
  unit: string;
  /** Minor units for one unit; below zero for a reduction. */
  price: number;
  /** Thousandths of a percent. */
  taxRate: number;
}

/** A reckoned line: `net` and `tax` in minor units, each rounded for itself. */
export interface Line extends LineInput {
  net: number;
  tax: number;
}

export interface Totals {
  net: number;
  tax: number;
  total: number;
}

/** Most that a document may come to, in minor units: what a column of the database holds. */
export const largestTotal = 2_000_000_000;

const metresInAFoot = 0.3048;

/** A whole division rounded half away from zero, so that a reduction takes off what the same charge put on. */
export function divideHalfUp(dividend: bigint, divisor: bigint): bigint {
  const negative = dividend < 0n;
  const size = negative ? -dividend : dividend;
  const rounded = (2n * size + divisor) / (2n * divisor);
  return negative ? -rounded : rounded;
}

/** Net and tax of one line, each rounded half up to a minor unit. */
export function reckonLine(line: LineInput): Line {
  const net = divideHalfUp(BigInt(line.quantity) * BigInt(line.price), 1_000n);
  const tax = divideHalfUp(net * BigInt(line.taxRate), 100_000n);
  return { ...line, net: Number(net), tax: Number(tax) };
}

/** The sums of lines as they are printed: nobody who adds the lines up finds another figure. */
export function totalsOf(lines: readonly Pick<Line, 'net' | 'tax'>[]): Totals {
  const net = lines.reduce((sum, line) => sum + line.net, 0);
  const tax = lines.reduce((sum, line) => sum + line.tax, 0);
  return { net, tax, total: net + tax };
}

/** What each rate of tax comes to, highest first: what an invoice has to say. */
export function taxByRate(lines: readonly Line[]): { taxRate: number; net: number; tax: number }[] {
  const sums = new Map<number, { taxRate: number; net: number; tax: number }>();
  for (const { taxRate, net, tax } of lines) {
    const sum = sums.get(taxRate) ?? { taxRate, net: 0, tax: 0 };
    sums.set(taxRate, { taxRate, net: sum.net + net, tax: sum.tax + tax });
  }
  return [...sums.values()].sort((a, b) => b.taxRate - a.taxRate);
}

const thousandths = (value: number, step: number) => Math.round((value * 1_000) / step) * step;

/**
 * The lines of a fee by the firm’s rates: length, hours, what is missing to the minimum fee, travel. Metres and hours
 * are taken to the hundredth, feet and distances to the tenth. A rate of 0 makes no line.
 */
export function feeLines(rates: Rates, basis: FeeBasis): Line[] {
  const { taxRate } = rates;
  const lines: Line[] = [];
  const add = (text: string, quantity: number, unit: string, price: number) => {
    if (quantity > 0 && price > 0) lines.push(reckonLine({ text, quantity, unit, price, taxRate }));
  };
  const { lengthM = 0, hours = 0, distance = 0 } = basis;
  const length =
    rates.lengthUnit === 'm' ? thousandths(lengthM, 10) : thousandths(lengthM / metresInAFoot, 100);
  add('Survey, by length overall', length, rates.lengthUnit, rates.perLength);
  add('Survey, by time on board and writing', thousandths(hours, 10), 'h', rates.perHour);
  const short = rates.minimum - totalsOf(lines).net;
  if (short > 0) add('Made up to the minimum fee', 1_000, '', short);
  add('Travel, there and back', thousandths(distance, 100), rates.distanceUnit, rates.perDistance);
  return lines;
}

/** An amount with its currency as it is printed: `1,234.50 EUR`. */
export function writtenAmount(minor: number, currency: string): string {
  const decimals = decimalsOf(currency);
  const figure = new Intl.NumberFormat('en-GB', {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(minor / 10 ** decimals);
  return `${figure} ${currency}`;
}

/** A quantity with its unit: `11.28 m`; empty for a lump sum. */
export function writtenQuantity({ quantity, unit }: Pick<LineInput, 'quantity' | 'unit'>): string {
  if (unit === '' && quantity === 1_000) return '';
  const figure = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 3 }).format(quantity / 1_000);
  return unit === '' ? `× ${figure}` : `${figure} ${unit}`;
}

/** A rate of tax: 20000 is `20%`, 8875 is `8.875%`. */
export const writtenRate = (taxRate: number): string =>
  `${new Intl.NumberFormat('en-GB', { maximumFractionDigits: 3 }).format(taxRate / 1_000)}%`;
