import type { SnapshotHullNumber } from '@garboard/contract/report-snapshot';
import { evaluate, InputsRefused } from '@garboard/trade/worksheets/core/evaluate';
import { hullNumber } from '@garboard/trade/worksheets/rules/hull-number';

/** What is read off the number itself, in the order of its characters. */
const told = ['country', 'manufacturer', 'serial', 'format', 'month', 'year', 'modelYear'] as const;

/**
 * The hull number taken apart, compared with the year built. Null where there is none, or where it can't be one,
 * such as a sail number or a builder's own.
 */
export function decodedHullNumber(
  marked: string | null,
  yearBuilt: number | null,
): SnapshotHullNumber | null {
  if (!marked?.trim()) return null;
  try {
    const { outputs, verdict, reasons } = evaluate(hullNumber, {
      marked: marked.trim(),
      ...(yearBuilt === null ? {} : { yearBuilt }),
    });
    const fields = told.flatMap((key) => {
      const output = outputs[key];
      return output && output.value !== null ? [{ label: output.label, text: output.text }] : [];
    });
    return { verdict, reasons, fields };
  } catch (error) {
    if (error instanceof InputsRefused) return null;
    throw error;
  }
}
