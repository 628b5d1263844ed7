import type { Survey } from '@garboard/contract/surveys';
import type { VisitView } from '@garboard/contract/visits';
import { visitAnswerLabels, visitStateLabels } from '@garboard/trade/engagement';
import { surveyIsEditable } from '@garboard/trade/states';
import { attendanceConditionLabels, partyRoleLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { Link } from 'wouter';
import { useList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { Button } from '../../ui/Button.tsx';
import { formatDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Table } from '../../ui/Table.tsx';
import { AnswerVisit } from './AnswerVisit.tsx';
import { VisitForm } from './VisitForm.tsx';
import { VisitSteps } from './VisitSteps.tsx';
import { clockThere } from './visitTime.ts';

/** When a visit is, as people say it: 4 May 2026, 09:00 to 12:00. */
export function visitTime({ startsAt, endsAt, timeZone }: VisitView): string {
  const [from, to] = [clockThere(startsAt, timeZone), clockThere(endsAt, timeZone)];
  const until = from.day === to.day ? to.time : `${to.time} on ${formatDay(to.day)}`;
  return `${formatDay(from.day)}, ${from.time} to ${until}`;
}

/** The visits of a survey: arranged by the firm, answered by those who are asked. */
export function Visits({ survey }: { survey: Survey }) {
  const list = useList('listVisits', { params: { id: survey.id } });
  const [editing, setEditing] = useState<VisitView | 'new' | null>(null);
  const writes = mayDo('visit.write', survey);
  return (
    <section className="stack">
      <h2>Visits</h2>
      <MoreList
        list={list}
        what="the visits"
        empty={
          <p className="measure">
            {writes
              ? 'No visit arranged yet. Arrange one with the yard and the broker; everybody asked gets it into their calendar.'
              : 'The firm has arranged no visit yet.'}
          </p>
        }
      >
        {(visits) => (
          <>
            <Table
              caption={`In order of time; times of ${survey.timeZone}`}
              rows={visits}
              rowKey={(visit) => visit.id}
              columns={[
                { key: 'when', heading: 'When', cell: visitTime },
                {
                  key: 'where',
                  heading: 'Where',
                  cell: (v) => (
                    <>
                      {v.place}, {attendanceConditionLabels[v.condition].toLowerCase()}
                      {v.note ? <small className="text">{v.note}</small> : null}
                    </>
                  ),
                },
                { key: 'state', heading: 'Now', cell: (v) => visitStateLabels[v.state] },
                { key: 'asked', heading: writes ? 'Asked' : 'Your answer', cell: (v) => <Asked visit={v} /> },
                ...(writes
                  ? [
                      {
                        key: 'steps',
                        heading: 'Do',
                        cell: (v: VisitView) => <VisitSteps visit={v} onChange={() => setEditing(v)} />,
                      },
                    ]
                  : []),
              ]}
            />
            {visits
              .filter((v) => v.state === 'arranged' && v.asks.some((ask) => ask.mine))
              .map((v) => (
                <AnswerVisit key={v.id} visit={v} when={visitTime(v)} />
              ))}
            <p>
              <Link href="/account">Have your visits in your own calendar</Link>
            </p>
          </>
        )}
      </MoreList>
      {editing ? (
        <VisitForm
          key={editing === 'new' ? 'new' : editing.id}
          survey={survey}
          visit={editing === 'new' ? undefined : editing}
          onClose={() => setEditing(null)}
        />
      ) : null}
      {writes && !editing && surveyIsEditable(survey.state) ? (
        <p>
          <Button onClick={() => setEditing('new')}>Arrange a visit</Button>
        </p>
      ) : null}
    </section>
  );
}

function Asked({ visit }: { visit: VisitView }) {
  if (!visit.asks.length) return null;
  return (
    <ul className="plain-list">
      {visit.asks.map((ask) => (
        <li key={ask.partyId}>
          {ask.mine ? '' : `${ask.name}, ${partyRoleLabels[ask.role].toLowerCase()}: `}
          {visitAnswerLabels[ask.answer]}
          {ask.note ? `, “${ask.note}”` : ''}
        </li>
      ))}
    </ul>
  );
}
