import { Field, RadioGroup, SelectField, TextArea, TextField } from '../../../ui/Field.tsx';
import type { Entry } from './draft.ts';
import { emptyEntry } from './draft.ts';
import type { FieldSpec } from './fieldSpec.ts';
import { RowsField } from './RowsField.tsx';
import { rememberUnit } from './usualUnits.ts';

/** What the server said of a field, by its path within the inputs: `readings/0/pressure`. */
export type ErrorOf = (path: string) => string | undefined;

interface Props {
  field: FieldSpec;
  path: string;
  entry: Entry | undefined;
  set: (entry: Entry) => void;
  errorOf: ErrorOf;
}

const yesOrNo = { yes: 'Yes', no: 'No' } as const;

/** One field of a worksheet, asked for as its kind asks. */
export function EntryField({ field, path, entry = emptyEntry, set, errorOf }: Props) {
  const asked = {
    label: field.label,
    hint: hintOf(field),
    error: errorOf(path),
    optional: !field.required && field.fallback === undefined,
  };
  const text = { value: entry.text, onChange: (value: string) => set({ ...entry, text: value }) };
  switch (field.field) {
    case 'measure':
      return <MeasureField {...{ field, path, entry, set, errorOf }} />;
    case 'number':
    case 'count':
    case 'money':
      return <TextField {...asked} {...text} short inputMode="decimal" autoComplete="off" />;
    case 'currency':
      return (
        <TextField {...asked} {...text} short maxLength={3} autoCapitalize="characters" autoComplete="off" />
      );
    case 'day':
      return <TextField {...asked} {...text} short type="date" />;
    case 'choice':
      return Object.keys(field.choices).length <= 3 ? (
        <RadioGroup {...asked} {...text} name={path} options={field.choices} />
      ) : (
        <SelectField {...asked} {...text} options={field.choices} empty="Choose" />
      );
    case 'yesNo':
      return (
        <RadioGroup
          {...asked}
          {...text}
          name={path}
          options={yesOrNo}
          value={text.value as 'yes' | 'no' | ''}
        />
      );
    case 'rows':
      return <RowsField {...{ field, path, entry, set, errorOf }} />;
    case 'grid':
      return (
        <TextArea
          {...asked}
          {...text}
          hint={
            <>
              {field.help ? `${field.help}. ` : null}
              One row of readings a line, parted by spaces; a dash where none was taken. A block of cells can
              be pasted from a spreadsheet.
            </>
          }
          rows={8}
          spellCheck={false}
        />
      );
    default:
      return <TextField {...asked} {...text} maxLength={200} />;
  }
}

/** A number and the unit it was read in. */
export function MeasureField({ field, path, entry = emptyEntry, set, errorOf }: Props) {
  const unit = entry.unit ?? field.unit;
  return (
    <Field
      label={field.label}
      hint={hintOf(field)}
      error={errorOf(path)}
      optional={!field.required && field.fallback === undefined}
    >
      {(control) => (
        <span className="measure-entry">
          <input
            {...control}
            className="input"
            inputMode="decimal"
            autoComplete="off"
            value={entry.text}
            onChange={(event) => set({ ...entry, text: event.target.value, unit })}
          />
          <UnitChoice
            field={field}
            unit={unit}
            onChange={(chosen) => {
              rememberUnit(field, chosen);
              set({ ...entry, unit: chosen });
            }}
          />
        </span>
      )}
    </Field>
  );
}

function UnitChoice({
  field,
  unit,
  onChange,
}: {
  field: FieldSpec;
  unit: string;
  onChange: (unit: string) => void;
}) {
  if (field.units.length < 2) return <span className="unit">{field.units[0]?.symbol}</span>;
  return (
    <select
      className="input unit"
      aria-label={`Unit of ${field.label}`}
      value={unit}
      onChange={(event) => onChange(event.target.value)}
    >
      {field.units.map(({ key, symbol }) => (
        <option key={key} value={key}>
          {symbol || 'number'}
        </option>
      ))}
    </select>
  );
}

function hintOf(field: FieldSpec): string | undefined {
  const usual = fallbackWords(field);
  if (usual === undefined) return field.help;
  return `${field.help ? `${field.help}. ` : ''}If left empty: ${usual}`;
}

function fallbackWords(field: FieldSpec): string | undefined {
  const { fallback } = field;
  if (fallback === undefined || fallback === null) return undefined;
  if (typeof fallback === 'boolean') return fallback ? 'yes' : 'no';
  if (typeof fallback === 'object') {
    const { value, unit } = fallback as { value?: number; unit?: string };
    if (value === undefined) return undefined;
    return `${value} ${field.units.find(({ key }) => key === unit)?.symbol ?? ''}`.trim();
  }
  if (field.field === 'choice') return field.choices[String(fallback)] ?? String(fallback);
  const symbol = field.units.find(({ key }) => key === field.unit)?.symbol;
  return `${String(fallback)}${symbol ? ` ${symbol}` : ''}`;
}
