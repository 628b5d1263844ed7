import type { Finding } from '@garboard/contract/findings';
import { type BoatPlace, placeInWords } from '@garboard/trade/drawing/boat-places';
import { type Grading, probabilityWords, severityWords } from '@garboard/trade/grading';
import type { Harm, System, Urgency } from '@garboard/trade/vocabulary';
import { harmLabels, systemLabels } from '@garboard/trade/vocabulary';
import type { CallArgs } from '../../api/client.ts';
import { Incomplete } from '../../api/problems.ts';
import { count, formatDay, listed } from '../../ui/format.ts';
import { urgencyText } from '../../ui/UrgencyGauge.tsx';
import { type CostDraft, costFrom, draftOfCost, showCost } from './costDraft.ts';

/** One of several things to be put right; named here already, so that saving it twice keeps it one. */
export interface ItemDraft {
  id: string;
  text: string;
}

/** A finding as it is being written. */
export interface FindingDraft {
  system: System | '';
  title: string;
  observed: string;
  consequence: string;
  recommendation: string;
  urgency: Urgency | '';
  withinDays: string;
  harms: Harm[];
  /** One a line. */
  references: string;
  photoIds: string[];
  items: ItemDraft[];
  /** A last day of its own, or empty. */
  dueOnSet: string;
  position: BoatPlace | null;
  cost: CostDraft;
  severity: Grading['severity'] | null;
  probability: Grading['probability'] | null;
  /** The known defect it began from. */
  origin: { key: string; version: number | null } | null;
}

export const findingLabels: Record<keyof FindingDraft, string> = {
  system: 'System',
  title: 'Title',
  observed: 'What was seen',
  consequence: 'Why it matters',
  recommendation: 'What to do',
  urgency: 'How soon',
  withinDays: 'Within how many days',
  harms: 'What could come of it',
  references: 'References',
  photoIds: 'Photos',
  items: 'To be put right one by one',
  dueOnSet: 'Due on a day of its own',
  position: 'Where on the boat',
  cost: 'Cost to put right',
  severity: 'Severity of the worst that can credibly happen',
  probability: 'Probability over the life of the boat',
  origin: 'Begun from the known defect',
};

/** The form filled from a finding; empty, with the photos given, for a new one. */
export function draftOf(finding: Finding | null, photoIds: readonly string[] = []): FindingDraft {
  return {
    system: finding?.system ?? '',
    title: finding?.title ?? '',
    observed: finding?.observed ?? '',
    consequence: finding?.consequence ?? '',
    recommendation: finding?.recommendation ?? '',
    urgency: finding?.urgency ?? '',
    withinDays: finding?.withinDays == null ? '' : String(finding.withinDays),
    harms: finding?.harms ?? [],
    references: finding?.references.join('\n') ?? '',
    photoIds: finding?.photoIds ?? [...photoIds],
    items: finding?.items.map(({ id, text }) => ({ id, text })) ?? [],
    dueOnSet: finding?.dueOnSet ?? '',
    position: finding?.position ? placeOf(finding.position) : null,
    cost: draftOfCost(finding?.cost ?? null),
    severity: finding?.grading?.severity ?? null,
    probability: finding?.grading?.probability ?? null,
    origin: finding?.catalogueKey ? { key: finding.catalogueKey, version: finding.catalogueVersion } : null,
  };
}

/** In one order of its parts, so that two of the same compare as the same. */
const placeOf = ({ along, height, side }: BoatPlace): BoatPlace => ({ along, height, side });

/** What still has to be written before the finding can be kept with the survey; empty when nothing. */
export function missingFrom(draft: FindingDraft): string[] {
  const missing = [];
  if (!draft.title.trim()) missing.push('a title');
  if (!draft.system) missing.push('the system');
  if (!draft.urgency) missing.push('how soon');
  if (draft.urgency === 'within-days' && !/^[1-9]\d{0,3}$/.test(draft.withinDays)) missing.push('the days');
  if (costFrom(draft.cost) === undefined) missing.push('the rest of the cost');
  return missing;
}

/** The form as the API wants it. @throws Incomplete while something is missing. */
export function bodyOf(draft: FindingDraft): CallArgs<'createFinding'>['body'] {
  const { system, urgency, severity, probability } = draft;
  const cost = costFrom(draft.cost);
  if (!system || !urgency || cost === undefined)
    throw new Incomplete(`It still needs ${listed(missingFrom(draft))}.`);
  return {
    system,
    urgency,
    title: draft.title,
    observed: draft.observed,
    consequence: draft.consequence,
    recommendation: draft.recommendation,
    withinDays: urgency === 'within-days' && draft.withinDays ? Number(draft.withinDays) : null,
    harms: draft.harms,
    references: draft.references
      .split('\n')
      .map((reference) => reference.trim())
      .filter(Boolean),
    photoIds: draft.photoIds,
    items: draft.items.filter((item) => item.text.trim()),
    dueOnSet: urgency !== 'note' && draft.dueOnSet ? draft.dueOnSet : null,
    position: draft.position,
    cost,
    grading: severity && probability ? { severity, probability } : null,
    catalogueKey: draft.origin?.key ?? null,
    catalogueVersion: draft.origin?.version ?? null,
  };
}

/** One field in words, to set two versions side by side; photos by their number in the survey. */
export function showField(
  key: keyof FindingDraft,
  draft: FindingDraft,
  photoNumber: (id: string) => number,
): string {
  switch (key) {
    case 'system':
      return draft.system ? systemLabels[draft.system] : '';
    case 'urgency':
      return draft.urgency ? urgencyText(draft.urgency) : '';
    case 'harms':
      return listed(draft.harms.map((harm) => harmLabels[harm]));
    case 'photoIds':
      if (!draft.photoIds.length) return '';
      return `${count(draft.photoIds.length, 'photo')}: ${draft.photoIds.map(photoNumber).join(', ')}`;
    case 'items':
      return draft.items.map((item) => item.text).join('\n');
    case 'dueOnSet':
      return draft.dueOnSet ? formatDay(draft.dueOnSet) : '';
    case 'position':
      return draft.position ? placeInWords(draft.position) : '';
    case 'cost':
      return showCost(draft.cost);
    case 'severity':
      return draft.severity ? severityWords[draft.severity] : '';
    case 'probability':
      return draft.probability ? probabilityWords[draft.probability] : '';
    case 'origin':
      return draft.origin?.key ?? '';
    default:
      return draft[key];
  }
}
