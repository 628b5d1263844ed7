import { etagOf } from '@garboard/contract/client';
import { useState } from 'react';
import type { Answer, CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { RadioGroup, SelectField, TextField } from '../../ui/Field.tsx';
import { count } from '../../ui/format.ts';

type FirmAnswer = Answer<'getFirm'>;

const months = Object.fromEntries(
  Array.from({ length: 12 }, (_, at) => [
    String(at + 1).padStart(2, '0'),
    new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' }).format(
      new Date(Date.UTC(2026, at, 1)),
    ),
  ]),
);
const ways = {
  none: 'They need no clearing',
  year: 'Within a year of the report',
  days: 'Within a number of days of the report',
  day: 'On a day of the year',
} as const;
type Way = keyof typeof ways;

/** How the firm reckons due dates that a finding doesn't state itself; the principal may change it. */
export function DueDates({ firm, editable }: { firm: FirmAnswer; editable: boolean }) {
  const [editing, setEditing] = useState(false);
  return (
    <section className="stack">
      <h2>Due dates</h2>
      {editing ? (
        <Editor firm={firm} onClose={() => setEditing(false)} />
      ) : (
        <>
          <Facts
            facts={[
              [
                'Before next use',
                firm.beforeUseDays
                  ? `${count(firm.beforeUseDays, 'day')} after the report is issued`
                  : 'On the day the report is issued',
              ],
              ['Within a stated time', 'As stated on the finding, counted from the day of issue'],
              ['At the next lay-up', layupWords(firm)],
            ]}
          />
          <p className="soft">A date set by hand on a finding goes before these.</p>
          {editable ? <Button onClick={() => setEditing(true)}>Edit the due dates</Button> : null}
        </>
      )}
    </section>
  );
}

function wayOf({ layupRequiresClearing, layupDays, layupDay }: FirmAnswer): Way {
  if (!layupRequiresClearing) return 'none';
  return layupDay ? 'day' : layupDays ? 'days' : 'year';
}

function layupWords(firm: FirmAnswer): string {
  const way = wayOf(firm);
  if (way === 'days') return `${count(firm.layupDays ?? 0, 'day')} after the report is issued`;
  if (way !== 'day') return ways[way];
  const [month = '', day = ''] = (firm.layupDay ?? '').split('-');
  return `Every ${Number(day)} ${months[month] ?? ''}, the next one after the report`;
}

function Editor({ firm, onClose }: { firm: FirmAnswer; onClose: () => void }) {
  const [base] = useState(firm);
  const [beforeUse, setBeforeUse] = useState(String(firm.beforeUseDays));
  const [way, setWay] = useState<Way>(wayOf(firm));
  const [days, setDays] = useState(String(firm.layupDays ?? 180));
  const [month, setMonth] = useState(firm.layupDay?.slice(0, 2) ?? '03');
  const [day, setDay] = useState(String(Number(firm.layupDay?.slice(3) ?? '31')));
  const save = useAction({
    run: (body: CallArgs<'updateFirm'>['body']) =>
      call('updateFirm', { params: { id: base.id }, body, ifMatch: etagOf(base) }),
    done: 'The firm’s due dates are saved. They count for reports issued from now on.',
    touches: ['getFirm', 'getMe'],
    onDone: onClose,
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        save.run({
          beforeUseDays: Number(beforeUse),
          layupRequiresClearing: way !== 'none',
          layupDays: way === 'days' ? Number(days) : null,
          layupDay: way === 'day' ? `${month}-${day.padStart(2, '0')}` : null,
        });
      }}
    >
      <ErrorNotice error={save.error} />
      <TextField
        label="Findings before next use are due so many days after issue"
        hint="0 is the day of issue itself."
        short
        type="number"
        required
        min={0}
        max={90}
        value={beforeUse}
        onChange={setBeforeUse}
        error={fieldError(save.error, '/beforeUseDays')}
      />
      <RadioGroup
        label="Findings for the next haul-out or lay-up"
        name="layup"
        value={way}
        options={ways}
        onChange={setWay}
      />
      {way === 'days' ? (
        <TextField
          label="Days after issue"
          short
          type="number"
          required
          min={1}
          max={1100}
          value={days}
          onChange={setDays}
          error={fieldError(save.error, '/layupDays')}
        />
      ) : null}
      {way === 'day' ? (
        <div className="fields-2">
          <TextField
            label="Day"
            type="number"
            required
            min={1}
            max={31}
            value={day}
            onChange={setDay}
            error={fieldError(save.error, '/layupDay')}
          />
          <SelectField
            label="Month"
            value={month}
            options={months}
            onChange={(value) => setMonth(value || month)}
          />
        </div>
      ) : null}
      <div className="actions">
        <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
          Save the due dates
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
