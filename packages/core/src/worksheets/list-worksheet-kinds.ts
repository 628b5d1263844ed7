import type { WorksheetKindSummary } from '@garboard/contract/worksheets';
import type { AnyWorksheet } from '@garboard/trade/worksheets/core/worksheet';
import { worksheets } from '@garboard/trade/worksheets/registry';
import type { Page } from '../paging.ts';

/** What is said of a kind wherever it is named. */
export function summariseKind(worksheet: AnyWorksheet): WorksheetKindSummary {
  const { kind, version, title, group, system, purpose } = worksheet;
  return { kind, version, title, group, system, purpose };
}

/** Every kind of worksheet in the order they are offered: one page, however many there are. */
export function listWorksheetKinds(): Page<WorksheetKindSummary> {
  return { items: worksheets.map(summariseKind), next: null };
}
