import { isDeepStrictEqual } from 'node:util';
import type { Worksheet } from '@garboard/contract/worksheets';
import { evaluate, InputsRefused, type WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet } from '@garboard/trade/worksheets/registry';

interface Kept {
  kind: string;
  kindVersion: number;
  inputs: unknown;
  result: unknown;
}

/** Whether the computation has a newer version than the one that gave a kept result. */
export const isOutdated = (kept: Pick<Kept, 'kind' | 'kindVersion'>): boolean =>
  (findWorksheet(kept.kind)?.version ?? 0) > kept.kindVersion;

/** What decides, without the wording. */
const essence = ({ verdict, outputs }: Pick<WorksheetResult, 'verdict' | 'outputs'>) => ({
  verdict,
  outputs: Object.fromEntries(
    Object.entries(outputs).map(([key, { value, unit }]) => [key, { value, unit: unit ?? null }]),
  ),
});

/** What the newer version of a worksheet makes of the inputs of a kept one; null when there is none newer. */
export function newerResult(kept: Kept): Worksheet['newer'] {
  const current = findWorksheet(kept.kind);
  if (!current || !isOutdated(kept)) return null;
  const { version } = current;
  try {
    const result = evaluate(current, kept.inputs);
    const differs = !isDeepStrictEqual(essence(result), essence(kept.result as WorksheetResult));
    return { version, verdict: result.verdict, reasons: result.reasons, differs };
  } catch (error) {
    if (!(error instanceof InputsRefused)) throw error;
    // The newer version asks for more, or allows less.
    const reasons = error.problems.map((p) => p.message);
    return { version, verdict: 'indeterminate', reasons, differs: true };
  }
}
