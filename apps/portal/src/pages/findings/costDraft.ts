import type { Finding } from '@garboard/contract/findings';
import { type CostBasis, costBasisLabels, decimalsOf, isCurrency, writtenCost } from '@garboard/trade/costs';

type Cost = NonNullable<Finding['cost']>;

/** A cost as it is being written, amounts as people write them. */
export interface CostDraft {
  low: string;
  high: string;
  currency: string;
  basis: CostBasis;
  note: string;
}

export const noCost: CostDraft = { low: '', high: '', currency: '', basis: 'opinion', note: '' };

/** Minor units as people write them: 120050 cents as `1200.50`. */
function amountOf(minor: number, currency: string): string {
  const decimals = decimalsOf(currency);
  const text = (minor / 10 ** decimals).toFixed(decimals);
  return text.replace(/\.0+$/, '');
}

export function draftOfCost(cost: Finding['cost']): CostDraft {
  if (!cost) return noCost;
  const { low, high, currency, basis, note } = cost;
  return {
    low: amountOf(low, currency),
    high: high === low ? '' : amountOf(high, currency),
    currency,
    basis,
    note,
  };
}

/** An amount in minor units; undefined when it isn't one. A comma or a point may part the decimals. */
function minorOf(text: string, currency: string): number | undefined {
  const decimals = decimalsOf(currency);
  const close = text.replace(/[\s'’]/g, '');
  // With three decimals, 1.500 could be either: there it is one and a half.
  const tidy = decimals === 3 ? close : close.replace(/[.,](?=\d{3}(\D|$))/g, '');
  const match = /^(\d{1,10})(?:[.,](\d{1,3}))?$/.exec(tidy);
  const fraction = match?.[2] ?? '';
  if (!match || fraction.length > decimals) return undefined;
  return Number(`${match[1]}${fraction.padEnd(decimals, '0')}`);
}

/** The cost as the API wants it: null when none is given, undefined while it is incomplete or can't be read. */
export function costFrom(draft: CostDraft): Cost | null | undefined {
  if (!draft.low.trim() && !draft.high.trim()) return null;
  const currency = draft.currency.trim().toUpperCase();
  if (!isCurrency(currency)) return undefined;
  const low = minorOf(draft.low || draft.high, currency);
  const high = minorOf(draft.high || draft.low, currency);
  if (low === undefined || high === undefined || low > high) return undefined;
  return { low, high, currency, basis: draft.basis, note: draft.note };
}

/** What is wrong with a cost being written, in a sentence. */
export function costProblem(draft: CostDraft): string | undefined {
  if (costFrom(draft) !== undefined) return undefined;
  const currency = draft.currency.trim().toUpperCase();
  if (!isCurrency(currency)) return 'Give the currency by its three letters, such as EUR.';
  const low = minorOf(draft.low || draft.high, currency);
  const high = minorOf(draft.high || draft.low, currency);
  if (low === undefined || high === undefined) return 'Write amounts in figures, such as 1200 or 1200.50.';
  return 'The first amount is the lower one.';
}

/** In words, as it will be printed. */
export function showCost(draft: CostDraft): string {
  const cost = costFrom(draft);
  if (!cost) return draft.low || draft.high ? `${draft.low} to ${draft.high} ${draft.currency}` : '';
  return [`${writtenCost(cost)}, ${costBasisLabels[cost.basis].toLowerCase()}`, cost.note]
    .filter(Boolean)
    .join('. ');
}
