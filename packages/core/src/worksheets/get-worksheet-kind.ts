import type { WorksheetKind } from '@garboard/contract/worksheets';
import { inputJsonSchema } from '@garboard/trade/worksheets/core/describe';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import { notFound } from '../problems.ts';
import { summariseKind } from './list-worksheet-kinds.ts';

/** A kind with what a form needs to ask for its inputs. @throws Refusal `not-found` */
export function getWorksheetKind(kind: string): WorksheetKind {
  const worksheet = findWorksheet(kind);
  if (!worksheet) throw notFound('kind of worksheet');
  const { applicability, cautions, sources } = worksheet;
  return {
    ...summariseKind(worksheet),
    inputs: inputJsonSchema(worksheet),
    applicability,
    cautions,
    sources,
  };
}
