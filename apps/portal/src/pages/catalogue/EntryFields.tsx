import { slots } from '@garboard/trade/catalogue/slots';
import { harmLabels, systemLabels, urgencyLabels } from '@garboard/trade/vocabulary';
import { fieldError } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { CheckboxGroup, SelectField, TextArea, TextField } from '../../ui/Field.tsx';
import { ChooseEntry } from './ChooseEntry.tsx';
import { type EntryDraft, entryLabels as labels } from './entryDraft.ts';

type TextKey = { [K in keyof EntryDraft]: EntryDraft[K] extends string ? K : never }[keyof EntryDraft];

const slotNames = Object.keys(slots)
  .map((slot) => `{${slot}}`)
  .join(' ');

/** The form of an entry. */
export function EntryFields({
  draft,
  set,
  error,
  firmId,
}: {
  draft: EntryDraft;
  set: (change: Partial<EntryDraft>) => void;
  error: unknown;
  firmId: string;
}) {
  const kinds = useAnswer('listWorksheetKinds', {});
  const area = (key: Exclude<TextKey, 'system' | 'urgency'>, hint?: string, rows = 4) => (
    <TextArea
      label={labels[key]}
      hint={hint}
      rows={rows}
      dir="auto"
      value={draft[key]}
      onChange={(value) => set({ [key]: value })}
      error={fieldError(error, `/${key}`)}
    />
  );
  return (
    <>
      <SelectField
        label={labels.system}
        required
        value={draft.system}
        options={systemLabels}
        empty="Choose the system"
        onChange={(system) => set({ system })}
        error={fieldError(error, '/system')}
      />
      <TextField
        label={labels.title}
        hint="A few words, as you would say it on the telephone."
        required
        maxLength={200}
        dir="auto"
        value={draft.title}
        onChange={(title) => set({ title })}
        error={fieldError(error, '/title')}
      />
      {area('lookFor', 'Where to look, how to test, and what looks like it but is harmless.')}
      {area('observed', `Gaps to be filled in each time: ${slotNames}`)}
      {area('consequence')}
      {area('recommendation')}
      <SelectField
        label={labels.urgency}
        required
        value={draft.urgency}
        options={urgencyLabels}
        empty="Choose how soon"
        onChange={(urgency) => set({ urgency })}
        error={fieldError(error, '/urgency')}
      />
      {draft.urgency === 'within-days' ? (
        <TextField
          label={labels.withinDays}
          short
          type="number"
          required
          min={1}
          max={3650}
          value={draft.withinDays}
          onChange={(withinDays) => set({ withinDays })}
          error={fieldError(error, '/withinDays')}
        />
      ) : null}
      <TextField
        label={labels.raise}
        optional
        dir="auto"
        value={draft.raise}
        onChange={(raise) => set({ raise })}
        error={fieldError(error, '/raise')}
      />
      <TextField
        label={labels.lower}
        optional
        dir="auto"
        value={draft.lower}
        onChange={(lower) => set({ lower })}
        error={fieldError(error, '/lower')}
      />
      <CheckboxGroup
        label={labels.harms}
        values={draft.harms}
        options={harmLabels}
        onChange={(harms) => set({ harms })}
        error={fieldError(error, '/harms')}
      />
      {area('cautions', 'What can hurt while looking or testing, one a line.', 2)}
      {area('references', 'Standards and regulations by their designation, one a line.', 2)}
      {area('alsoCalled', 'Other words for it, one a line: the search finds it by them.', 2)}
      <details>
        <summary>
          {labels.worksheets}, {draft.worksheets.length}
        </summary>
        <CheckboxGroup
          label={labels.worksheets}
          values={draft.worksheets}
          options={Object.fromEntries((kinds.data?.items ?? []).map(({ kind, title }) => [kind, title]))}
          onChange={(worksheets) => set({ worksheets })}
        />
      </details>
      <details>
        <summary>
          {labels.related}, {draft.related.length}
        </summary>
        <ul className="plain-list">
          {draft.related.map((other) => (
            <li key={other.key}>
              {other.title}{' '}
              <Button
                kind="quiet"
                aria-label={`Remove: ${other.title}`}
                onClick={() => set({ related: draft.related.filter(({ key }) => key !== other.key) })}
              >
                Remove
              </Button>
            </li>
          ))}
        </ul>
        <ChooseEntry
          firmId={firmId}
          onChoose={({ key, title }) =>
            set({ related: [...draft.related.filter((other) => other.key !== key), { key, title }] })
          }
        />
      </details>
    </>
  );
}
