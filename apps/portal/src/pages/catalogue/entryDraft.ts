import type { CatalogueEntry } from '@garboard/contract/catalogue';
import type { Harm, System, Urgency } from '@garboard/trade/vocabulary';
import { harmLabels, systemLabels } from '@garboard/trade/vocabulary';
import type { CallArgs } from '../../api/client.ts';
import { listed } from '../../ui/format.ts';
import { urgencyText } from '../../ui/UrgencyGauge.tsx';

/** An entry as it is being written; lists of words are texts with one a line. */
export interface EntryDraft {
  system: System | '';
  title: string;
  lookFor: string;
  observed: string;
  consequence: string;
  recommendation: string;
  urgency: Urgency | '';
  withinDays: string;
  raise: string;
  lower: string;
  harms: Harm[];
  cautions: string;
  references: string;
  alsoCalled: string;
  worksheets: string[];
  related: { key: string; title: string }[];
}

export const entryLabels: Record<keyof EntryDraft, string> = {
  system: 'System',
  title: 'Title',
  lookFor: 'What to look for',
  observed: 'What is seen',
  consequence: 'Why it matters',
  recommendation: 'What to do',
  urgency: 'How soon',
  withinDays: 'Within how many days',
  raise: 'When sooner',
  lower: 'When later',
  harms: 'What could come of it',
  cautions: 'Cautions',
  references: 'References',
  alsoCalled: 'Also called',
  worksheets: 'Worksheets that measure it',
  related: 'Inspect also',
};

export function draftOf(entry: CatalogueEntry | null): EntryDraft {
  return {
    system: entry?.system ?? '',
    title: entry?.title ?? '',
    lookFor: entry?.lookFor ?? '',
    observed: entry?.observed ?? '',
    consequence: entry?.consequence ?? '',
    recommendation: entry?.recommendation ?? '',
    urgency: entry?.urgency ?? '',
    withinDays: entry?.withinDays == null ? '' : String(entry.withinDays),
    raise: entry?.raise ?? '',
    lower: entry?.lower ?? '',
    harms: entry?.harms ?? [],
    cautions: entry?.cautions.join('\n') ?? '',
    references: entry?.references.join('\n') ?? '',
    alsoCalled: entry?.alsoCalled.join('\n') ?? '',
    worksheets: entry?.worksheets.map(({ kind }) => kind) ?? [],
    related: entry?.related ?? [],
  };
}

const lines = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean);

/** The form as the API wants it. System and urgency are required by the form itself. */
export function bodyOf(draft: EntryDraft): CallArgs<'putCatalogueEntry'>['body'] {
  const { system, urgency } = draft;
  if (!system || !urgency) throw new TypeError('An entry needs its system and urgency before it is sent.');
  return {
    ...draft,
    system,
    urgency,
    withinDays: urgency === 'within-days' && draft.withinDays ? Number(draft.withinDays) : null,
    raise: draft.raise.trim() || null,
    lower: draft.lower.trim() || null,
    cautions: lines(draft.cautions),
    references: lines(draft.references),
    alsoCalled: lines(draft.alsoCalled),
    related: draft.related.map(({ key }) => key),
  };
}

/** A name for a new entry: the words of its title, and something that makes it the only one. */
export function keyFor(title: string, unique: string): string {
  const words = title
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim()
    .slice(0, 60)
    .trim();
  return `${words.replaceAll(' ', '-') || 'entry'}-${unique.slice(0, 6)}`;
}

/** One field in words, to set two versions side by side. */
export function showField(key: keyof EntryDraft, draft: EntryDraft): string {
  switch (key) {
    case 'system':
      return draft.system ? systemLabels[draft.system] : '';
    case 'urgency':
      return draft.urgency ? urgencyText(draft.urgency) : '';
    case 'harms':
      return listed(draft.harms.map((harm) => harmLabels[harm]));
    case 'worksheets':
      return draft.worksheets.join('\n');
    case 'related':
      return draft.related.map(({ title }) => title).join('\n');
    default:
      return draft[key];
  }
}
