import { etagOf } from '@garboard/contract/client';
import type { Survey } from '@garboard/contract/surveys';
import type { VisitView } from '@garboard/contract/visits';
import { addDays } from '@garboard/trade/due-dates';
import { attendanceConditionLabels, partyRoleLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useWholeList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { CheckboxGroup, SelectField, TextArea, TextField } from '../../ui/Field.tsx';
import { today } from '../../ui/format.ts';
import { clockThere, instantThere } from './visitTime.ts';

/** Who answers for a visit; insurers and lenders have no part in it. */
const asked = ['owner', 'buyer', 'broker', 'yard'];

/** Arranges a visit, or changes one. */
export function VisitForm({
  survey,
  visit,
  onClose,
}: {
  survey: Survey;
  visit: VisitView | undefined;
  onClose: () => void;
}) {
  const { timeZone } = survey;
  const parties = useWholeList('listParties', { params: { id: survey.id } });
  const [draft, setDraft] = useState(() => {
    const from = visit ? clockThere(visit.startsAt, timeZone) : null;
    const to = visit ? clockThere(visit.endsAt, timeZone) : null;
    return {
      day: from?.day ?? addDays(today(timeZone), 7),
      from: from?.time ?? '09:00',
      lastDay: to && to.day !== from?.day ? to.day : '',
      to: to?.time ?? '13:00',
      place: visit?.place ?? '',
      condition: visit?.condition ?? ('ashore' as const),
      note: visit?.note ?? '',
      partyIds: visit?.asks.map((ask) => ask.partyId) ?? [],
    };
  });
  const save = useAction({
    run: (d: typeof draft, key) => {
      const body = {
        startsAt: instantThere(d.day, d.from, timeZone),
        endsAt: instantThere(d.lastDay || d.day, d.to, timeZone),
        place: d.place,
        condition: d.condition,
        note: d.note,
        partyIds: d.partyIds,
      };
      return visit
        ? call('updateVisit', { params: { id: visit.id }, body, ifMatch: etagOf(visit) })
        : call('createVisit', { params: { id: survey.id }, body, idempotencyKey: key });
    },
    done: visit
      ? 'The visit is changed; who was asked is told.'
      : 'The visit is arranged; who is asked is told.',
    touches: ['listVisits', 'getSurvey', 'listSurveys', 'listEvents'],
    onDone: onClose,
  });
  const people = Object.fromEntries(
    (parties.data ?? [])
      .filter((party) => asked.includes(party.role))
      .map((party) => [party.id, `${party.name}, ${partyRoleLabels[party.role].toLowerCase()}`]),
  );
  const set = (part: Partial<typeof draft>) => setDraft({ ...draft, ...part });
  return (
    <form
      className="stack measure section"
      onSubmit={(event) => {
        event.preventDefault();
        save.run(draft);
      }}
    >
      <h3>{visit ? 'Change the visit' : 'Arrange a visit'}</h3>
      <p className="soft">Times of the clock where the boat lies ({timeZone}).</p>
      <ErrorNotice error={save.error} />
      <div className="filters">
        <TextField label="Day" type="date" required value={draft.day} onChange={(day) => set({ day })} />
        <TextField label="From" type="time" required value={draft.from} onChange={(from) => set({ from })} />
        <TextField
          label="To"
          type="time"
          required
          value={draft.to}
          onChange={(to) => set({ to })}
          error={fieldError(save.error, '/endsAt')}
        />
        <TextField
          label="Last day"
          optional
          type="date"
          value={draft.lastDay}
          onChange={(lastDay) => set({ lastDay })}
        />
      </div>
      <TextField
        label="Place"
        required
        maxLength={160}
        value={draft.place}
        onChange={(place) => set({ place })}
        error={fieldError(save.error, '/place')}
      />
      <SelectField
        label="The vessel will be"
        value={draft.condition}
        options={attendanceConditionLabels}
        onChange={(condition) => condition && set({ condition })}
      />
      <TextArea
        label="To know"
        optional
        hint="Keys, haul-out, who opens, what has to be ready. Everybody asked reads it."
        value={draft.note}
        onChange={(note) => set({ note })}
      />
      {Object.keys(people).length ? (
        <CheckboxGroup
          label="Ask"
          hint="Moving the visit asks them again."
          values={draft.partyIds}
          options={people}
          onChange={(partyIds) => set({ partyIds })}
        />
      ) : (
        <p>No yard, broker, owner or buyer is invited yet, so nobody can be asked.</p>
      )}
      <div className="actions">
        <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
          {visit ? 'Save the change' : 'Arrange it'}
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
