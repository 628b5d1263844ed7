import { etagOf } from '@garboard/contract/client';
import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import type { Worksheet, WorksheetKind } from '@garboard/contract/worksheets';
import { useLocation, useSearch } from 'wouter';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useWholeList } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { useRecordEdit } from '../../app/recordEdit.ts';
import { Button } from '../../ui/Button.tsx';
import { Restored } from '../../ui/EditNotices.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Merge } from '../../ui/Merge.tsx';
import { SurveyFrame } from '../surveys/SurveyFrame.tsx';
import { DeleteWorksheet } from './DeleteWorksheet.tsx';
import { type Filing, FilingFields } from './FilingFields.tsx';
import { draftOf, inputsOf, missingFrom } from './form/draft.ts';
import { EntryField } from './form/EntryField.tsx';
import { type FieldSpec, fieldsOf } from './form/fieldSpec.ts';
import { LiveResult } from './LiveResult.tsx';
import { useEvaluation } from './useEvaluation.ts';

function valuesOf(fields: FieldSpec[], worksheet: Worksheet | null, findingId: string): Filing {
  return {
    title: worksheet?.title ?? '',
    findingId: worksheet ? (worksheet.findingId ?? '') : findingId,
    printed: worksheet?.printed ?? true,
    entries: draftOf(fields, worksheet?.inputs ?? null),
  };
}

const labels: Record<keyof Filing, string> = {
  title: 'Name',
  findingId: 'Finding',
  printed: 'In the report',
  entries: 'Readings and answers',
};

/** The form of a worksheet with its live result beside it. */
export function WorksheetEditor({
  survey,
  kind,
  worksheet,
}: {
  survey: Survey;
  kind: WorksheetKind;
  worksheet: Worksheet | null;
}) {
  const [, go] = useLocation();
  const forFinding = new URLSearchParams(useSearch()).get('finding') ?? '';
  const fields = fieldsOf(kind.inputs);
  const findings = useWholeList('listFindings', { params: { id: survey.id } });
  const home = `/surveys/${survey.id}/worksheets`;
  const edit = useRecordEdit<Worksheet, Filing>({
    record: worksheet,
    valuesOf: (record) => valuesOf(fields, record, forFinding),
    save: ({ title, findingId, printed, entries }, base, idempotencyKey) => {
      const filing = { findingId: findingId || null, printed, inputs: inputsOf(fields, entries) };
      const named = title.trim() ? { title: title.trim() } : base ? { title: kind.title } : {};
      return base
        ? call('updateWorksheet', {
            params: { id: base.id },
            body: { ...filing, ...named },
            ifMatch: etagOf(base),
          })
        : call('createWorksheet', {
            params: { id: survey.id },
            body: { kind: kind.kind, ...filing, ...named },
            idempotencyKey,
          });
    },
    reload: () => call('getWorksheet', { params: { id: worksheet?.id ?? '' } }),
    keepAs: `unsaved:worksheet:${worksheet?.id ?? `new:${survey.id}:${kind.kind}`}`,
    touches: ['listWorksheets', 'getWorksheet', 'getFinding', 'listFindings', 'listEvents'],
    done: (saved) => `Saved: ${saved.title}.`,
    onDone: () => leaving.pass(() => go(home)),
  });
  const leaving = useLeaveWarning(edit.unsaved, edit.discard);
  const inputs = inputsOf(fields, edit.values.entries);
  const live = useEvaluation(kind.kind, inputs);
  const missing = missingFrom(fields, edit.values.entries);
  const title = worksheet ? worksheet.title : kind.title;
  if (edit.theirs) {
    return (
      <SurveyFrame survey={survey} title={title}>
        <Merge
          base={valuesOf(fields, edit.base, forFinding)}
          mine={edit.values}
          theirs={valuesOf(fields, edit.theirs, forFinding)}
          labels={labels}
          show={(key, values) => showFiling(key, values, fields, findings.data ?? [])}
          busy={edit.busy}
          onSettle={edit.settle}
          onPostpone={edit.postpone}
        />
      </SurveyFrame>
    );
  }
  // While a form is being filled in, what is still empty is no mistake yet: only what was written is faulted.
  const faults = edit.error ?? live.error;
  const usual = fields.filter((field) => field.fallback !== undefined);
  const entry = (field: FieldSpec) => (
    <EntryField
      key={field.key}
      field={field}
      path={field.key}
      entry={edit.values.entries[field.key]}
      set={(value) => edit.set({ entries: { ...edit.values.entries, [field.key]: value } })}
      errorOf={(path) => faultOf(faults, path, inputs, edit.error !== null)}
    />
  );
  return (
    <SurveyFrame survey={survey} title={title}>
      <p className="text">{kind.purpose}</p>
      <form
        className="worksheet-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          edit.save();
        }}
      >
        <div className="stack">
          <Restored when={edit.restored} onDiscard={edit.discard} />
          <div className="entries">{fields.filter((field) => field.fallback === undefined).map(entry)}</div>
          {usual.length ? (
            <details open={usual.some((field) => faultOf(faults, field.key, inputs, true))}>
              <summary>Limits and usual values, {usual.length}</summary>
              <div className="entries">{usual.map(entry)}</div>
            </details>
          ) : null}
          <FilingFields
            values={edit.values}
            usualTitle={kind.title}
            findings={findings.data ?? []}
            set={edit.set}
            error={edit.error}
          />
          <ErrorNotice error={edit.error} />
          <div className="actions">
            <Button kind="main" type="submit" busy={edit.busy} busyLabel="Saving…">
              Save the worksheet
            </Button>
            <Button
              onClick={() => {
                edit.discard();
                leaving.pass(() => go(home));
              }}
            >
              Cancel
            </Button>
            {worksheet && !worksheet.issued ? (
              <DeleteWorksheet worksheet={worksheet} onDeleted={() => leaving.pass(() => go(home))} />
            ) : null}
          </div>
        </div>
        <LiveResult live={live} missing={missing} newer={worksheet?.newer ?? null} cautions={kind.cautions} />
      </form>
      {leaving.dialog}
    </SurveyFrame>
  );
}

/** What the server said of a field; nothing of an empty one before the worksheet was sent. */
function faultOf(error: unknown, path: string, inputs: unknown, sent: boolean): string | undefined {
  const said = fieldError(error, `/inputs/${path}`);
  if (!said || sent) return said;
  const given = path
    .split('/')
    .reduce<unknown>((at, part) => (at as Record<string, unknown> | undefined)?.[part], inputs);
  return given === undefined ? undefined : said;
}

function showFiling(key: keyof Filing, values: Filing, fields: FieldSpec[], findings: Finding[]): string {
  switch (key) {
    case 'printed':
      return values.printed ? 'Yes' : 'No';
    case 'findingId':
      return findings.find((finding) => finding.id === values.findingId)?.title ?? '';
    case 'entries':
      return fields
        .map((field) => {
          const entry = values.entries[field.key];
          const text = entry?.rows ? `${entry.rows.length} × ${field.each}` : (entry?.text ?? '');
          return `${field.label}: ${text} ${entry?.text && entry.unit ? entry.unit : ''}`.trimEnd();
        })
        .join('\n');
    default:
      return values.title;
  }
}
