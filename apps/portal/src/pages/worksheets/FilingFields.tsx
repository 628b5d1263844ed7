import type { Finding } from '@garboard/contract/findings';
import { fieldError } from '../../api/problems.ts';
import { Checkbox, SelectField, TextField } from '../../ui/Field.tsx';
import type { Draft } from './form/draft.ts';

/** A worksheet as it is being filled in: its entries, and where they go. */
export interface Filing {
  title: string;
  findingId: string;
  printed: boolean;
  entries: Draft;
}

/** What a worksheet is called, which finding it measures and whether it is printed. */
export function FilingFields({
  values,
  usualTitle,
  findings,
  set,
  error,
}: {
  values: Filing;
  usualTitle: string;
  findings: readonly Finding[];
  set: (change: Partial<Filing>) => void;
  error: unknown;
}) {
  const options = Object.fromEntries(
    findings.map((finding) => [finding.id, `${finding.number}. ${finding.title}`]),
  );
  return (
    <fieldset className="stack section">
      <legend className="vh">Where it goes</legend>
      <TextField
        label="Name"
        optional
        hint={`To tell it from others of its kind, such as “Port side, at the bracket”. If left empty: ${usualTitle}`}
        maxLength={200}
        value={values.title}
        onChange={(title) => set({ title })}
        error={fieldError(error, '/title')}
      />
      <SelectField
        label="Measures this finding"
        optional
        value={values.findingId}
        options={options}
        empty="None: it stands by itself"
        onChange={(findingId) => set({ findingId })}
        error={fieldError(error, '/findingId')}
      />
      <Checkbox
        label="Print it in the report"
        checked={values.printed}
        onChange={(printed) => set({ printed })}
      />
    </fieldset>
  );
}
