import type { CatalogueEntry } from '@garboard/contract/catalogue';
import { uuidv7 } from 'uuidv7';
import { startFrom } from '../catalogue/startFrom.ts';
import type { FindingDraft } from './findingDraft.ts';

/** Where unsaved writing of a finding is kept in this window. */
export const keptAs = (findingId: string): string => `unsaved:finding:${findingId}`;
const pointerOf = (surveyId: string): string => `new-finding:${surveyId}`;

/** An id for a finding about to be recorded: the one before when a crash left its text unsaved, so that it is found. */
export function idForNew(surveyId: string): string {
  const before = sessionStorage.getItem(pointerOf(surveyId));
  return before && sessionStorage.getItem(keptAs(before)) ? before : anotherId(surveyId);
}

/** An id for one more finding. */
export function anotherId(surveyId: string): string {
  const id = uuidv7();
  sessionStorage.setItem(pointerOf(surveyId), id);
  return id;
}

/** What an entry gives a finding: every field of it that nobody has written in yet. */
export function begunFrom(entry: CatalogueEntry, draft: FindingDraft): Partial<FindingDraft> {
  const { catalogueKey, catalogueVersion, withinDays, ...fields } = startFrom(entry);
  const begun: Partial<FindingDraft> = { origin: { key: catalogueKey, version: catalogueVersion } };
  for (const [key, value] of Object.entries(fields)) {
    const written = draft[key as keyof typeof fields];
    if (written.length === 0) Object.assign(begun, { [key]: value });
  }
  if (begun.urgency) begun.withinDays = withinDays;
  return begun;
}
