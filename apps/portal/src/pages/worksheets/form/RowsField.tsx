import { Button } from '../../../ui/Button.tsx';
import type { Entry } from './draft.ts';
import { emptyEntry, withRow } from './draft.ts';
import type { ErrorOf } from './EntryField.tsx';
import { EntryField } from './EntryField.tsx';
import type { FieldSpec } from './fieldSpec.ts';

/** A list of rows, each with the same fields: readings, plates, sales. */
export function RowsField({
  field,
  path,
  entry = emptyEntry,
  set,
  errorOf,
}: {
  field: FieldSpec;
  path: string;
  entry: Entry | undefined;
  set: (entry: Entry) => void;
  errorOf: ErrorOf;
}) {
  const rows = entry.rows ?? [];
  const error = errorOf(path);
  const change = (at: number, key: string, cell: Entry) =>
    set({
      ...entry,
      rows: rows.map((row, i) => (i === at ? { ...row, cells: { ...row.cells, [key]: cell } } : row)),
    });
  return (
    <fieldset className="entry-rows">
      <legend className="field-label">
        {field.label}
        {field.required ? null : <span className="soft"> (optional)</span>}
      </legend>
      {field.help ? <span className="field-hint">{field.help}</span> : null}
      {error ? <span className="field-error">{error}</span> : null}
      <ol className={field.columns.length === 1 ? 'entry-run' : undefined}>
        {rows.map(({ row, cells }, at) => (
          <li key={row}>
            <fieldset aria-label={`${field.label}, ${field.each} ${at + 1}`} className="entry-row">
              {errorOf(`${path}/${at}`) ? (
                <span className="field-error">{errorOf(`${path}/${at}`)}</span>
              ) : null}
              {field.columns.map((column) => (
                <EntryField
                  key={column.key}
                  field={column}
                  path={`${path}/${at}/${column.key}`}
                  entry={cells[column.key]}
                  set={(cell) => change(at, column.key, cell)}
                  errorOf={errorOf}
                />
              ))}
              <Button
                kind="quiet"
                aria-label={`Remove ${field.each} ${at + 1}`}
                onClick={() => set({ ...entry, rows: rows.filter((_, i) => i !== at) })}
              >
                Remove
              </Button>
            </fieldset>
          </li>
        ))}
      </ol>
      {rows.length < field.mostRows ? (
        <Button onClick={() => set({ ...entry, rows: withRow(field.columns, rows) })}>
          Add a {field.each}
        </Button>
      ) : null}
    </fieldset>
  );
}
