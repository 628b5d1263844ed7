import type { Finding } from '@garboard/contract/findings';
import { type CostBasis, costBasisLabels, isCurrency, writtenCost } from '@garboard/trade/costs';
import { amountOf, minorOf } from '../../app/money.ts';

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
