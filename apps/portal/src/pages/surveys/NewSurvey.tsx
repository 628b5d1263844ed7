import { useState } from 'react';
import { useLocation } from 'wouter';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { useFilters } from '../../app/filters.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { useMe } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Page } from '../../ui/Page.tsx';
import { VesselChoice } from '../vessels/VesselChoice.tsx';
import type { AttendanceRow } from './AttendanceRows.tsx';
import { AttendanceRows, attendancesOf } from './AttendanceRows.tsx';
import type { SurveyDraft } from './surveyForm.tsx';
import { emptySurvey, SurveyFields } from './surveyForm.tsx';

/** A new survey: which vessel, what for, when attended. Everything but vessel and purpose can wait. */
export default function NewSurvey() {
  const [, go] = useLocation();
  const me = useMe();
  const mine = me.firmRoles[0];
  const [filter] = useFilters();
  const [vesselId, setVesselId] = useState(filter('vessel'));
  const [draft, setDraft] = useState<SurveyDraft>(() =>
    emptySurvey(mine && mine.role !== 'office' ? me.person.id : ''),
  );
  const [rows, setRows] = useState<AttendanceRow[]>([]);
  const [missing, setMissing] = useState('');
  const [touched, setTouched] = useState(false);
  const leaving = useLeaveWarning(touched, () => undefined);
  const create = useAction({
    run: (body: CallArgs<'createSurvey'>['body'], idempotencyKey) =>
      call('createSurvey', { body, idempotencyKey }),
    done: (survey) => `Survey ${survey.number} of ${survey.vesselName} begun.`,
    touches: ['listSurveys'],
    onDone: (survey) =>
      leaving.pass(() => go(`/surveys/${survey.id}${filter('then') === 'bring-in' ? '/bring-in' : ''}`)),
  });
  function send() {
    const { purpose } = draft;
    setMissing(vesselId ? '' : 'Choose the vessel, or enter a new one.');
    if (!vesselId || !purpose) return;
    create.run({
      ...draft,
      surveyorId: draft.surveyorId || null,
      purpose,
      vesselId,
      attendances: attendancesOf(rows),
    });
  }
  return (
    <Page title="New survey">
      <form
        className="stack measure"
        onChange={() => setTouched(true)}
        onSubmit={(event) => {
          event.preventDefault();
          send();
        }}
      >
        <VesselChoice value={vesselId} onChange={setVesselId} />
        <SurveyFields
          firmId={mine?.firm.id ?? ''}
          draft={draft}
          set={(change) => setDraft((now) => ({ ...now, ...change }))}
          error={create.error}
        />
        <AttendanceRows rows={rows} onChange={setRows} timeZone={draft.timeZone} error={create.error} />
        <ErrorNotice error={create.error} />
        <p role="alert" className="field-error">
          {missing}
        </p>
        <div className="actions">
          <Button kind="main" type="submit" busy={create.busy} busyLabel="Beginning…">
            Begin the survey
          </Button>
        </div>
      </form>
      {leaving.dialog}
    </Page>
  );
}
