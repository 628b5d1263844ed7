import type { AttendanceCondition } from '@garboard/trade/vocabulary';
import { attendanceConditionLabels } from '@garboard/trade/vocabulary';
import { fieldError } from '../../api/problems.ts';
import { Button } from '../../ui/Button.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { today } from '../../ui/format.ts';

/** One visit to the vessel. `key` only tells rows apart on the screen. */
export interface AttendanceRow {
  key: number;
  date: string;
  place: string;
  condition: AttendanceCondition;
}

let lastKey = 0;

/** A row for today in the survey's zone, or one made of a stored attendance. */
export function attendanceRow(from?: Omit<AttendanceRow, 'key'>, timeZone?: string): AttendanceRow {
  lastKey += 1;
  return { date: today(timeZone), place: '', condition: 'ashore', ...from, key: lastKey };
}

/** The rows without what only the screen needs. */
export function attendancesOf(rows: readonly AttendanceRow[]) {
  return rows.map(({ date, place, condition }) => ({ date, place, condition }));
}

/** When and where the vessel was attended, and how she lay. */
export function AttendanceRows({
  rows,
  onChange,
  timeZone,
  error,
}: {
  rows: readonly AttendanceRow[];
  onChange: (rows: AttendanceRow[]) => void;
  timeZone: string;
  error: unknown;
}) {
  const change = (at: number, part: Partial<AttendanceRow>) =>
    onChange(rows.map((row, i) => (i === at ? { ...row, ...part } : row)));
  return (
    <fieldset className="stack">
      <legend className="field-label">Attendances</legend>
      {rows.length ? null : <p className="soft">None yet. A report needs at least one.</p>}
      {rows.map((row, at) => (
        <fieldset key={row.key} aria-label={`Attendance ${at + 1}`} className="filters">
          <TextField
            label="Date"
            type="date"
            required
            value={row.date}
            onChange={(date) => change(at, { date })}
            error={fieldError(error, `/attendances/${at}/date`)}
          />
          <TextField
            className="grow"
            label="Place"
            required
            maxLength={160}
            value={row.place}
            onChange={(place) => change(at, { place })}
            error={fieldError(error, `/attendances/${at}/place`)}
          />
          <SelectField
            label="The vessel was"
            value={row.condition}
            options={attendanceConditionLabels}
            onChange={(condition) => condition && change(at, { condition })}
          />
          <Button
            kind="quiet"
            aria-label={`Remove attendance ${at + 1}`}
            onClick={() => onChange(rows.filter((_, i) => i !== at))}
          >
            Remove
          </Button>
        </fieldset>
      ))}
      <Button onClick={() => onChange([...rows, attendanceRow(undefined, timeZone)])}>
        Add an attendance
      </Button>
    </fieldset>
  );
}
