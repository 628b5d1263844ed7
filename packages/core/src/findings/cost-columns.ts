import type { Finding } from '@garboard/contract/findings';
import type { Cost, CostBasis } from '@garboard/trade/costs';
import type { Grading } from '@garboard/trade/grading';

interface CostColumns {
  costLow: number | null;
  costHigh: number | null;
  costCurrency: string | null;
  costBasis: string | null;
  costNote: string;
}
interface GradingColumns {
  gradingSeverity: number | null;
  gradingProbability: string | null;
}

/** A cost as the row keeps it; nothing changes when it is undefined. */
export function costColumns(cost: Cost | null | undefined): CostColumns | Record<string, never> {
  if (cost === undefined) return {};
  return {
    costLow: cost?.low ?? null,
    costHigh: cost?.high ?? null,
    costCurrency: cost?.currency ?? null,
    costBasis: cost?.basis ?? null,
    costNote: cost?.note ?? '',
  };
}

/** A grading as the row keeps it; nothing changes when it is undefined. */
export function gradingColumns(grading: Grading | null | undefined): GradingColumns | Record<string, never> {
  if (grading === undefined) return {};
  return {
    gradingSeverity: grading?.severity ?? null,
    gradingProbability: grading?.probability ?? null,
  };
}

// The table's own checks keep the columns of each whole.

export function costOf(row: CostColumns): Finding['cost'] {
  const { costLow: low, costHigh: high, costCurrency: currency, costBasis } = row;
  if (low === null || high === null || currency === null) return null;
  return { low, high, currency, basis: costBasis as CostBasis, note: row.costNote };
}

export function gradingOf(row: GradingColumns): Finding['grading'] {
  const { gradingSeverity: severity, gradingProbability: probability } = row;
  if (severity === null || probability === null) return null;
  return { severity, probability } as Grading;
}
