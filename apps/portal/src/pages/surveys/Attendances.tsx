import { etagOf } from '@garboard/contract/client';
import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable } from '@garboard/trade/states';
import { attendanceConditionLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError, isStatus } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { same } from '../../app/merge.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea } from '../../ui/Field.tsx';
import { formatDay } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';
import { AttendanceRows, attendanceRow, attendancesOf } from './AttendanceRows.tsx';
import { SurveyFrame, WithSurvey } from './SurveyFrame.tsx';

/** When and where the vessel was seen. */
export default function Attendances({ id }: { id: string }) {
  return (
    <WithSurvey id={id}>
      {(survey) => (
        <SurveyFrame survey={survey} title="Attendances">
          {surveyIsEditable(survey.state) ? <Editor survey={survey} /> : <AttendanceTable survey={survey} />}
        </SurveyFrame>
      )}
    </WithSurvey>
  );
}

/** The attendances as a table, as they stand in the report. */
export function AttendanceTable({ survey }: { survey: Pick<Survey, 'attendances' | 'present'> }) {
  if (!survey.attendances.length) return <EmptyState title="No attendance recorded" />;
  return (
    <>
      <Table
        caption="In the order they were entered"
        rows={survey.attendances.map((attendance, at) => ({ ...attendance, at }))}
        rowKey={(row) => String(row.at)}
        columns={[
          { key: 'date', heading: 'Date', cell: (row) => formatDay(row.date) },
          { key: 'place', heading: 'Place', cell: (row) => row.place },
          {
            key: 'condition',
            heading: 'The vessel was',
            cell: (row) => attendanceConditionLabels[row.condition],
          },
        ]}
      />
      {survey.present.length > 0 ? <p>Also present: {survey.present.join('; ')}.</p> : null}
    </>
  );
}

const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean);

function Editor({ survey }: { survey: Survey }) {
  // What was loaded stays the ground of this edit, whatever is fetched meanwhile.
  const [base, setBase] = useState(survey);
  const [present, setPresent] = useState(survey.present.join('\n'));
  const [rows, setRows] = useState(() => survey.attendances.map((a) => attendanceRow(a)));
  const [theirs, setTheirs] = useState<Survey | null>(null);
  const unsaved = !same(attendancesOf(rows), base.attendances) || !same(linesOf(present), base.present);
  const leaving = useLeaveWarning(unsaved, () => undefined);
  const save = useAction({
    run: async (on: Survey) => {
      try {
        return await call('updateSurvey', {
          params: { id: on.id },
          body: { attendances: attendancesOf(rows), present: linesOf(present) },
          ifMatch: etagOf(on),
        });
      } catch (error) {
        if (isStatus(error, 412)) setTheirs(await call('getSurvey', { params: { id: on.id } }));
        throw error;
      }
    },
    done: 'Attendances saved.',
    touches: ['getSurvey', 'listSurveys', 'listEvents'],
    onDone: (saved) => {
      setBase(saved);
      setTheirs(null);
    },
  });
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        save.run(theirs ?? base);
      }}
    >
      <AttendanceRows rows={rows} onChange={setRows} timeZone={survey.timeZone} error={save.error} />
      <TextArea
        label="Also present"
        optional
        hint="One person a line, with what they are: Mary Example, owner. Printed in the report."
        value={present}
        onChange={setPresent}
        error={fieldError(save.error, '/present')}
      />
      <ErrorNotice error={save.error} />
      {theirs ? (
        <div className="stack">
          <p>
            The survey as someone else saved it has these attendances. Saving again puts yours in their place.
          </p>
          <AttendanceTable survey={theirs} />
        </div>
      ) : null}
      <div className="actions">
        <Button kind="main" type="submit" disabled={!unsaved && !theirs} busy={save.busy} busyLabel="Saving…">
          Save
        </Button>
      </div>
      {leaving.dialog}
    </form>
  );
}
