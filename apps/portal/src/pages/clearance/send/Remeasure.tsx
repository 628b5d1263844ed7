import type { Finding } from '@garboard/contract/findings';
import type { WorksheetKind } from '@garboard/contract/worksheets';
import { verdictLabels } from '@garboard/trade/vocabulary';
import { fieldError } from '../../../api/problems.ts';
import { useAnswer } from '../../../api/queries.ts';
import { Button } from '../../../ui/Button.tsx';
import { Loading } from '../../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { SelectField } from '../../../ui/Field.tsx';
import { draftOf, inputsOf, missingFrom } from '../../worksheets/form/draft.ts';
import { EntryField } from '../../worksheets/form/EntryField.tsx';
import { type FieldSpec, fieldsOf } from '../../worksheets/form/fieldSpec.ts';
import { LiveResult } from '../../worksheets/LiveResult.tsx';
import { useEvaluation } from '../../worksheets/useEvaluation.ts';
import type { EvidenceDraft } from './useEvidenceDraft.ts';

interface Props {
  finding: Finding;
  draft: EvidenceDraft;
  set: (change: Partial<EvidenceDraft>) => void;
  error: unknown;
}

/** A measurement as proof: taken again here, or one that the survey has already. */
export function Remeasure({ finding, draft, set, error }: Props) {
  const kinds = useAnswer('listWorksheetKinds', {});
  const kind = useAnswer(
    'getWorksheetKind',
    { params: { kind: draft.measured?.kind ?? '' } },
    { enabled: draft.measured !== null },
  );
  const before = [...new Set(finding.worksheets.map((worksheet) => worksheet.kind))];
  const titleOf = (key: string) => kinds.data?.items.find((one) => one.kind === key)?.title ?? key;
  const begin = (key: string) => set({ measured: { kind: key, entries: {} }, worksheetId: '' });
  if (draft.measured) {
    return (
      <fieldset className="stack section">
        <legend className="field-label">{kind.data?.title ?? 'Measurement'}</legend>
        {kind.data ? (
          <Readings key={kind.data.kind} kind={kind.data} {...{ draft, set, error }} />
        ) : kind.error ? (
          <ErrorNotice quiet error={kind.error} onRetry={() => void kind.refetch()} />
        ) : (
          <Loading what="the worksheet" />
        )}
        <Button kind="quiet" onClick={() => set({ measured: null })}>
          Leave the measurement out
        </Button>
      </fieldset>
    );
  }
  const others = Object.fromEntries(
    (kinds.data?.items ?? []).filter((one) => !before.includes(one.kind)).map((one) => [one.kind, one.title]),
  );
  return (
    <details open={before.length > 0 || draft.worksheetId !== ''}>
      <summary>A measurement as proof</summary>
      <div className="stack">
        {before.map((key) => (
          <Button key={key} onClick={() => begin(key)}>
            Measure again: {titleOf(key)}
          </Button>
        ))}
        <SelectField<string>
          label="Another measurement"
          optional
          value=""
          options={others}
          empty="None"
          onChange={(key) => (key ? begin(key) : undefined)}
        />
        {finding.worksheets.length ? (
          <SelectField
            label="One that the survey has already"
            optional
            value={draft.worksheetId}
            options={Object.fromEntries(
              finding.worksheets.map(({ id, title, verdict }) => [id, `${title}: ${verdictLabels[verdict]}`]),
            )}
            empty="None"
            onChange={(worksheetId) => set({ worksheetId })}
            error={fieldError(error, '/worksheetId')}
          />
        ) : null}
      </div>
    </details>
  );
}

function Readings({ kind, draft, set, error }: Omit<Props, 'finding'> & { kind: WorksheetKind }) {
  const fields = fieldsOf(kind.inputs);
  const written = draft.measured?.entries ?? {};
  const entries = Object.keys(written).length ? written : draftOf(fields, null);
  const live = useEvaluation(kind.kind, inputsOf(fields, entries));
  const missing = missingFrom(fields, entries);
  const usual = fields.filter((field) => field.fallback !== undefined);
  const entry = (field: FieldSpec) => (
    <EntryField
      key={field.key}
      field={field}
      path={field.key}
      entry={entries[field.key]}
      set={(one) => set({ measured: { kind: kind.kind, entries: { ...entries, [field.key]: one } } })}
      errorOf={(path) => fieldError(error, `/worksheet/inputs/${path}`)}
    />
  );
  return (
    <>
      <div className="entries">{fields.filter((field) => field.fallback === undefined).map(entry)}</div>
      {usual.length ? (
        <details>
          <summary>Limits and usual values, {usual.length}</summary>
          <div className="entries">{usual.map(entry)}</div>
        </details>
      ) : null}
      <LiveResult live={live} missing={missing} newer={null} cautions={kind.cautions} />
    </>
  );
}
