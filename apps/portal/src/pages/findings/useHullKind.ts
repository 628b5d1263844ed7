import type { HullKind } from '@garboard/trade/drawing/boat-outline';
import { hullKindOf } from '@garboard/trade/drawing/boat-places';
import type { System } from '@garboard/trade/vocabulary';
import { useAnswer, useWholeList } from '../../api/queries.ts';

/** How the survey's boat is drawn, as its report will draw her, with a finding of that system among the others. */
export function useHullKind(
  surveyId: string,
  findings: readonly { system: System }[],
  enabled: boolean,
): (system: System | '') => HullKind {
  const args = { params: { id: surveyId } };
  const coverage = useAnswer('getCoverage', args, { enabled });
  const inventory = useWholeList('listInventory', args, { enabled });
  return (system) =>
    hullKindOf(coverage.data?.items ?? [], [{ system }, ...findings, ...(inventory.data ?? [])]);
}
