import type { Finding } from '@garboard/contract/findings';
import { type Outcome, outcomeLabels, outcomes } from '@garboard/trade/re-inspection';
import { awaitsEvidence } from '@garboard/trade/states';
import type { AttendanceCondition } from '@garboard/trade/vocabulary';
import type { CallArgs } from '../../../api/client.ts';
import { Incomplete } from '../../../api/problems.ts';
import type { DraftFile } from '../../../capture/evidence.ts';
import { count, listed } from '../../../ui/format.ts';

/** A photo taken at the visit; once it has arrived it is a photo of the survey. */
export interface VisitPhoto extends DraftFile {
  photoId: string | null;
}

/** What was seen of one finding. */
export interface SeenDraft {
  /** Empty: not looked at. */
  outcome: Outcome | '';
  /** Null: all items that are left. */
  itemIds: string[] | null;
  note: string;
  limit: string;
  limitUntil: string;
  photos: VisitPhoto[];
}

/** A visit as it is being written down. */
export interface VisitDraft {
  /** Of the record that is to be: sent twice, it is made once. */
  id: string;
  date: string;
  place: string;
  condition: AttendanceCondition | '';
  note: string;
  seen: Record<string, SeenDraft>;
}

export const unseen: SeenDraft = {
  outcome: '',
  itemIds: null,
  note: '',
  limit: '',
  limitUntil: '',
  photos: [],
};

/** The items of a finding that nobody has decided on. */
export const itemsLeftOf = (finding: Finding) =>
  finding.items.filter((item) => awaitsEvidence.includes(item.state) || item.state === 'evidence-sent');

/** Those of the findings that were looked at, in their order. */
export function lookedAt(draft: VisitDraft, findings: readonly Finding[]): Finding[] {
  return findings.filter((finding) => draft.seen[finding.id]?.outcome);
}

/** Such as `3 findings: 2 put right, 1 not put right`. */
export function summaryOf(draft: VisitDraft, findings: readonly Finding[]): string {
  const seen = lookedAt(draft, findings);
  const parts = outcomes.flatMap((outcome) => {
    const n = seen.filter((finding) => draft.seen[finding.id]?.outcome === outcome).length;
    return n ? [`${n} ${outcomeLabels[outcome].toLowerCase()}`] : [];
  });
  return seen.length ? `${count(seen.length, 'finding')}: ${listed(parts)}` : 'No finding looked at yet';
}

type Body = CallArgs<'recordReInspection'>['body'];

/** The visit as the API wants it, its photos sent before. @throws Incomplete while something is missing */
export function bodyOf(draft: VisitDraft, findings: readonly Finding[]): Body {
  const { id, date, place, condition, note } = draft;
  const looked = lookedAt(draft, findings);
  if (!condition) throw new Incomplete('Say how the vessel lay.');
  if (!looked.length) throw new Incomplete('Say of at least one finding what was seen.');
  return {
    ...{ id, date, place, condition, note },
    items: looked.map((finding) => {
      const { outcome, itemIds, ...seen } = draft.seen[finding.id] ?? unseen;
      if (!outcome) throw new Incomplete(`Say what was seen of “${finding.title}”.`);
      const limited = outcome === 'as-it-is';
      const left = itemsLeftOf(finding).map((item) => item.id);
      return {
        findingId: finding.id,
        itemIds: itemIds ? left.filter((item) => itemIds.includes(item)) : [],
        outcome,
        note: seen.note,
        limit: limited ? seen.limit : '',
        limitUntil: limited && seen.limitUntil ? seen.limitUntil : null,
        photoIds: seen.photos.flatMap(({ photoId }) => (photoId ? [photoId] : [])),
      };
    }),
  };
}

/** Where a field of a finding stands in what is sent: `/items/2/note`. */
export function pointerTo(draft: VisitDraft, findings: readonly Finding[], findingId: string): string {
  return `/items/${lookedAt(draft, findings).findIndex((finding) => finding.id === findingId)}`;
}
