import type { Finding } from '@garboard/contract/findings';
import type { Harm, System, Urgency } from '@garboard/trade/vocabulary';
import { harmLabels, systemLabels } from '@garboard/trade/vocabulary';
import type { CallArgs } from '../../api/client.ts';
import { count, listed } from '../../ui/format.ts';
import { urgencyText } from '../../ui/UrgencyGauge.tsx';

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
};

/** The form filled from a finding, or empty. */
export function draftOf(finding: Finding | null): FindingDraft {
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
    photoIds: finding?.photoIds ?? [],
  };
}

/** The form as the API wants it. System and urgency are required by the form itself. */
export function bodyOf(draft: FindingDraft): CallArgs<'createFinding'>['body'] {
  const { system, urgency } = draft;
  if (!system || !urgency) throw new TypeError('A finding needs its system and urgency before it is sent.');
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
  };
}

/** One field in words, to set two versions side by side; photos by their number in the survey. */
export function showField(
  key: keyof FindingDraft,
  draft: FindingDraft,
  photoNumber: (id: string) => number,
): string {
  if (key === 'system') return draft.system ? systemLabels[draft.system] : '';
  if (key === 'urgency') return draft.urgency ? urgencyText(draft.urgency) : '';
  if (key === 'harms') return listed(draft.harms.map((harm) => harmLabels[harm]));
  if (key === 'photoIds') {
    if (!draft.photoIds.length) return '';
    return `${count(draft.photoIds.length, 'photo')}: ${draft.photoIds.map(photoNumber).join(', ')}`;
  }
  return draft[key];
}
