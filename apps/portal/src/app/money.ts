import { decimalsOf } from '@garboard/trade/costs';

/** Minor units as people write them: 120050 cents as `1200.50`, 120000 as `1200`. */
export function amountOf(minor: number, currency: string): string {
  const decimals = decimalsOf(currency);
  const text = (minor / 10 ** decimals).toFixed(decimals);
  return text.replace(/\.0+$/, '');
}

/** An amount in minor units; undefined when it isn't one. A comma or a point may part the decimals. */
export function minorOf(text: string, currency: string): number | undefined {
  return wholeOf(text, decimalsOf(currency));
}

/** A figure as so many decimals of it: `11.28` to 3 decimals is 11280; undefined when it has more, or isn't one. */
export function wholeOf(text: string, decimals: number): number | undefined {
  const close = text.replace(/[\s'’]/g, '');
  // With three decimals, 1.500 could be either: there it is one and a half.
  const tidy = decimals === 3 ? close : close.replace(/[.,](?=\d{3}(\D|$))/g, '');
  const match = /^(\d{1,10})(?:[.,](\d{1,3}))?$/.exec(tidy);
  const fraction = match?.[2] ?? '';
  if (!match || fraction.length > decimals) return undefined;
  return Number(`${match[1]}${fraction.padEnd(decimals, '0')}`);
}
