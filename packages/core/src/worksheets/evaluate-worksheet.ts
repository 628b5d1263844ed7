import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { notFound } from '../problems.ts';
import { workInputs } from './work-inputs.ts';

/** Works inputs and keeps nothing. @throws Refusal `not-found`, `invalid-input` */
export function evaluateWorksheet(input: { kind: string; inputs: Record<string, unknown> }): WorksheetResult {
  const worksheet = findWorksheet(input.kind);
  if (!worksheet) throw notFound('kind of worksheet');
  return workInputs(worksheet, input.inputs);
}
