import type { WorksheetKind } from '@garboard/contract/worksheets';
import { systemLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { keepWorksheet, type Place } from '../../capture/keep.ts';
import type { KeptWorksheet } from '../../capture/kept.ts';
import { Button } from '../../ui/Button.tsx';
import { TextField } from '../../ui/Field.tsx';
import { listed } from '../../ui/format.ts';
import { useStatus } from '../../ui/Status.tsx';
import { type Draft, draftOf, inputsOf, missingFrom } from '../worksheets/form/draft.ts';
import { EntryField } from '../worksheets/form/EntryField.tsx';
import { type FieldSpec, fieldsOf } from '../worksheets/form/fieldSpec.ts';
import { useHeard, useKept } from './data.ts';
import { Frame } from './Frame.tsx';
import { Missing } from './Missing.tsx';
import { useDraft } from './useDraft.ts';
import { useKeep } from './useKeep.ts';
import { usePlace } from './usePlace.ts';

/** A worksheet without its result: that comes when it is sent. `worksheetId` names a refused one to be corrected. */
export function FillWorksheet({
  surveyId,
  system,
  kind,
  worksheetId,
}: {
  surveyId: string;
  system: string;
  kind: string;
  worksheetId: string | null;
}) {
  const place = usePlace(surveyId, system);
  const kept = useKept();
  const heard = useHeard<WorksheetKind>('kind', kind);
  const refused = kept.find(
    (item): item is KeptWorksheet => item.kind === 'worksheet' && item.id === worksheetId,
  );
  if (!place || !heard || (worksheetId && !refused))
    return <Missing loading={heard === undefined || !kept.length} />;
  return <Form key={worksheetId ?? kind} place={place} kind={heard.data} refused={refused ?? null} />;
}

interface Filling {
  title: string;
  entries: Draft;
}

function Form({
  place,
  kind,
  refused,
}: {
  place: Place;
  kind: WorksheetKind;
  refused: KeptWorksheet | null;
}) {
  const [, go] = useLocation();
  const say = useStatus();
  const { run, busy, trouble } = useKeep();
  const [asked, setAsked] = useState(false);
  const [fields] = useState(() => fieldsOf(kind.inputs));
  const home = `/capture/${place.survey.id}/${place.system}`;
  const draft = useDraft<Filling>(`worksheet:${refused?.id ?? `${place.survey.id}:${kind.kind}`}`, () => ({
    title: refused?.title ?? '',
    entries: draftOf(fields, refused?.inputs ?? null),
  }));
  const { value, set } = draft;
  if (!value) return null;
  const missing = missingFrom(fields, value.entries);
  const usual = fields.filter(({ fallback }) => fallback !== undefined);
  const entry = (field: FieldSpec) => (
    <EntryField
      key={field.key}
      field={field}
      path={field.key}
      entry={value.entries[field.key]}
      set={(one) => set({ ...value, entries: { ...value.entries, [field.key]: one } })}
      errorOf={() => undefined}
    />
  );
  const keep = () =>
    run(async () => {
      const inputs = inputsOf(fields, value.entries);
      const sheet = { worksheetKind: kind.kind, kindTitle: kind.title, title: value.title.trim(), inputs };
      await keepWorksheet(place, sheet, refused?.id);
      await draft.drop();
      say('Worksheet kept. Its result comes when it is sent.');
      go(home);
    });
  return (
    <Frame
      title={kind.title}
      over={
        <>
          <strong>{place.survey.name}</strong> · {systemLabels[place.system]}
        </>
      }
      back={{ href: `${home}/worksheets`, label: 'the worksheets' }}
    >
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          setAsked(true);
          if (!missing.length) void keep();
        }}
      >
        {refused?.refusal ? <p className="field-error">{refused.refusal}</p> : null}
        {kind.cautions.length ? (
          <div className="notice">
            <ul>
              {kind.cautions.map((caution) => (
                <li key={caution}>{caution}</li>
              ))}
            </ul>
          </div>
        ) : null}
        <div className="entries">{fields.filter(({ fallback }) => fallback === undefined).map(entry)}</div>
        {usual.length ? (
          <details>
            <summary>Limits and usual values, {usual.length}</summary>
            <div className="entries">{usual.map(entry)}</div>
          </details>
        ) : null}
        <TextField
          label="Name"
          optional
          hint={`To tell it from others of its kind. If left empty: ${kind.title}`}
          maxLength={200}
          dir="auto"
          value={value.title}
          onChange={(title) => set({ ...value, title })}
        />
        {asked && missing.length ? (
          <p className="field-error" role="alert">
            Still empty: {listed(missing)}.
          </p>
        ) : null}
        {trouble ? (
          <p className="field-error" role="alert">
            {trouble}
          </p>
        ) : null}
        <div className="capture-actions">
          <Button kind="main" type="submit" busy={busy} busyLabel="Keeping…">
            Keep the worksheet
          </Button>
          <p className="soft small">Its result comes when it is sent.</p>
        </div>
      </form>
    </Frame>
  );
}
