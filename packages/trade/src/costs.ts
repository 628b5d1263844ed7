import { type Urgency, urgencies } from './vocabulary.ts';

/** What an estimate of cost rests on, and how it is marked wherever it is shown. */
export const costBasisLabels = { quotation: 'Yard’s quotation', opinion: 'Surveyor’s opinion' } as const;
export type CostBasis = keyof typeof costBasisLabels;
export const costBases = Object.keys(costBasisLabels) as CostBasis[];

/** What putting a finding right may cost, in minor units of an ISO 4217 currency; `low` is at most `high`. */
export interface Cost {
  low: number;
  high: number;
  currency: string;
  basis: CostBasis;
  note: string;
}

export interface CostTotal {
  urgency: Urgency;
  currency: string;
  low: number;
  high: number;
  /** How many findings are in it. */
  findings: number;
  /** How many of them rest on the surveyor's opinion. */
  opinions: number;
}

/** Most that an estimate may be, in minor units. */
export const largestCost = 2_000_000_000;

/** Whether a currency of three letters is one of ISO 4217. */
export function isCurrency(code: string): boolean {
  return Intl.supportedValuesOf('currency').includes(code);
}

/** How many decimals a currency is written with: 2 for the euro, 0 for the yen. */
export function decimalsOf(currency: string): number {
  const { maximumFractionDigits } = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
  }).resolvedOptions();
  return maximumFractionDigits ?? 2;
}

/** Totals for each urgency and currency, most urgent first: amounts of different currencies are never added. */
export function costsByUrgency(
  findings: readonly { urgency: Urgency; cost: Pick<Cost, 'low' | 'high' | 'currency' | 'basis'> | null }[],
): CostTotal[] {
  const totals = new Map<string, CostTotal>();
  for (const { urgency, cost } of findings) {
    if (!cost) continue;
    const key = `${urgency} ${cost.currency}`;
    const total = totals.get(key) ?? {
      ...{ urgency, currency: cost.currency, low: 0, high: 0, findings: 0, opinions: 0 },
    };
    total.low += cost.low;
    total.high += cost.high;
    total.findings += 1;
    if (cost.basis === 'opinion') total.opinions += 1;
    totals.set(key, total);
  }
  return [...totals.values()].sort(
    (a, b) =>
      urgencies.indexOf(a.urgency) - urgencies.indexOf(b.urgency) || a.currency.localeCompare(b.currency),
  );
}

/** Totals of all urgencies together, one a currency. */
export function costsInAll(totals: readonly CostTotal[]): Omit<CostTotal, 'urgency'>[] {
  const all = new Map<string, Omit<CostTotal, 'urgency'>>();
  for (const { urgency: _, ...total } of totals) {
    const sum = all.get(total.currency) ?? {
      ...{ currency: total.currency, low: 0, high: 0, findings: 0, opinions: 0 },
    };
    sum.low += total.low;
    sum.high += total.high;
    sum.findings += total.findings;
    sum.opinions += total.opinions;
    all.set(total.currency, sum);
  }
  return [...all.values()];
}

function amount(minor: number, currency: string): string {
  const decimals = decimalsOf(currency);
  const whole = minor % 10 ** decimals === 0;
  return new Intl.NumberFormat('en-GB', {
    minimumFractionDigits: whole ? 0 : decimals,
    maximumFractionDigits: decimals,
  }).format(minor / 10 ** decimals);
}

/** A range with its currency as it is printed: `1,200 to 1,800 EUR`, or one figure when both ends are the same. */
export function writtenCost({ low, high, currency }: Pick<Cost, 'low' | 'high' | 'currency'>): string {
  const range =
    low === high ? amount(low, currency) : `${amount(low, currency)} to ${amount(high, currency)}`;
  return `${range} ${currency}`;
}
