import type { InputHTMLAttributes, ReactNode, TextareaHTMLAttributes } from 'react';
import { useId } from 'react';

interface Labelled {
  label: string;
  hint?: ReactNode;
  error?: string;
  /** Says `optional` beside the label. */
  optional?: boolean;
}

interface ControlProps {
  id: string;
  'aria-describedby': string | undefined;
  'aria-invalid': true | undefined;
}

/** Label, hint and error around one control, tied together for a screen reader. */
export function Field({
  label,
  hint,
  error,
  optional,
  className = '',
  children,
}: Labelled & { className?: string; children: (control: ControlProps) => ReactNode }) {
  const id = useId();
  const described = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return (
    <div className={`field ${className}`}>
      <label className="field-label" htmlFor={id}>
        {label}
        {optional ? <span className="soft"> (optional)</span> : null}
      </label>
      {hint ? (
        <span className="field-hint" id={`${id}-hint`}>
          {hint}
        </span>
      ) : null}
      {error ? (
        <span className="field-error" id={`${id}-error`}>
          {error}
        </span>
      ) : null}
      {children({
        id,
        'aria-describedby': described || undefined,
        'aria-invalid': error ? true : undefined,
      })}
    </div>
  );
}

type InputProps = Omit<InputHTMLAttributes<HTMLInputElement>, 'value' | 'onChange' | 'className'>;

/** One line of text, a date, a number, an e-mail address or a password. */
export function TextField({
  label,
  hint,
  error,
  optional,
  value,
  onChange,
  short,
  className,
  ...input
}: Labelled &
  InputProps & { value: string; onChange: (value: string) => void; short?: boolean; className?: string }) {
  return (
    <Field label={label} hint={hint} error={error} optional={optional} className={className}>
      {(control) => (
        <input
          dir={input.type === undefined ? 'auto' : undefined}
          {...input}
          {...control}
          className={short ? 'input input-short' : 'input'}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

type AreaProps = Omit<TextareaHTMLAttributes<HTMLTextAreaElement>, 'value' | 'onChange' | 'className'>;

/** Paragraphs of text; grows with what is written where the browser can. */
export function TextArea({
  label,
  hint,
  error,
  optional,
  value,
  onChange,
  ...area
}: Labelled & AreaProps & { value: string; onChange: (value: string) => void }) {
  return (
    <Field label={label} hint={hint} error={error} optional={optional}>
      {(control) => (
        <textarea
          rows={4}
          dir="auto"
          // The page is in English; what is written is in the writer's language, and so is its spelling.
          lang={navigator.language}
          spellCheck
          {...area}
          {...control}
          className="input"
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

/** One choice out of a record of labels, in its order. `empty` adds a first choice that stands for none. */
export function SelectField<K extends string>({
  label,
  hint,
  error,
  optional,
  value,
  options,
  empty,
  onChange,
  className,
  required,
}: Labelled & {
  value: K | '';
  options: Readonly<Record<K, string>>;
  empty?: string;
  onChange: (value: K | '') => void;
  className?: string;
  required?: boolean;
}) {
  const keys = Object.keys(options) as K[];
  return (
    <Field label={label} hint={hint} error={error} optional={optional} className={className}>
      {(control) => (
        <select
          {...control}
          className="input"
          required={required}
          value={value}
          onChange={(event) => onChange(keys.find((key) => key === event.target.value) ?? '')}
        >
          {empty === undefined ? null : <option value="">{empty}</option>}
          {keys.map((key) => (
            <option key={key} value={key}>
              {options[key]}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** A single yes or no. */
export function Checkbox({
  label,
  checked,
  onChange,
}: {
  label: ReactNode;
  checked: boolean;
  onChange: (checked: boolean) => void;
}) {
  return (
    <label className="choice">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      <span>{label}</span>
    </label>
  );
}

/** Any number of choices out of a record of labels; answers keep the record's order. */
export function CheckboxGroup<K extends string>({
  label,
  hint,
  error,
  values,
  options,
  onChange,
}: Labelled & {
  values: readonly K[];
  options: Readonly<Record<K, string>>;
  onChange: (values: K[]) => void;
}) {
  const keys = Object.keys(options) as K[];
  return (
    <fieldset className="field">
      <legend className="field-label">{label}</legend>
      {hint ? <span className="field-hint">{hint}</span> : null}
      {error ? <span className="field-error">{error}</span> : null}
      <div className="choices">
        {keys.map((key) => (
          <Checkbox
            key={key}
            label={options[key]}
            checked={values.includes(key)}
            onChange={(checked) =>
              onChange(keys.filter((other) => (other === key ? checked : values.includes(other))))
            }
          />
        ))}
      </div>
    </fieldset>
  );
}

/** One choice of a few, all of them in sight. */
export function RadioGroup<K extends string>({
  label,
  hint,
  error,
  name,
  value,
  options,
  onChange,
  required,
}: Labelled & {
  name: string;
  required?: boolean;
  value: K | '';
  options: Readonly<Record<K, ReactNode>>;
  onChange: (value: K) => void;
}) {
  const keys = Object.keys(options) as K[];
  return (
    <fieldset className="field">
      <legend className="field-label">{label}</legend>
      {hint ? <span className="field-hint">{hint}</span> : null}
      {error ? <span className="field-error">{error}</span> : null}
      {keys.map((key) => (
        <label key={key} className="choice">
          <input
            type="radio"
            name={name}
            required={required}
            checked={value === key}
            onChange={() => onChange(key)}
          />
          <span>{options[key]}</span>
        </label>
      ))}
    </fieldset>
  );
}
