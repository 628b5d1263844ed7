import { etagOf } from '@garboard/contract/client';
import type { Survey } from '@garboard/contract/surveys';
import { purposeLabels } from '@garboard/trade/vocabulary';
import { call } from '../../api/client.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { useRecordEdit } from '../../app/recordEdit.ts';
import { Button } from '../../ui/Button.tsx';
import { Restored } from '../../ui/EditNotices.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Merge } from '../../ui/Merge.tsx';
import type { SurveyDraft } from './surveyForm.tsx';
import { emptySurvey, SurveyFields } from './surveyForm.tsx';

const labels: Record<keyof SurveyDraft, string> = {
  purpose: 'Purpose',
  surveyorId: 'Surveyor who signs',
  requestedBy: 'Asked for by',
  scope: 'Scope',
  limitations: 'Limitations',
  timeZone: 'Time zone',
  clearanceDecidedBy: 'Clearance decided by',
  printCosts: 'Costs in the report',
};

function valuesOf(survey: Survey | null): SurveyDraft {
  if (!survey) return emptySurvey();
  const { purpose, requestedBy, scope, limitations, timeZone, clearanceDecidedBy, printCosts } = survey;
  return {
    purpose,
    surveyorId: survey.surveyorId ?? '',
    requestedBy,
    scope,
    limitations,
    timeZone,
    clearanceDecidedBy,
    printCosts,
  };
}

/** A field in words, to set two versions side by side; the surveyor's name is known from either record. */
function showField(key: keyof SurveyDraft, values: SurveyDraft, records: (Survey | null)[]): string {
  if (key === 'purpose' && values.purpose) return purposeLabels[values.purpose];
  if (key === 'surveyorId' && values.surveyorId) {
    return (
      records.find((record) => record?.surveyorId === values.surveyorId)?.surveyorName ?? 'Another surveyor'
    );
  }
  const value = values[key];
  return typeof value === 'boolean' ? (value ? 'Printed' : 'Not printed') : value;
}

/** The particulars in a form; two people's changes are put together, not overwritten. */
export function ParticularsEditor({ survey, onClose }: { survey: Survey; onClose: () => void }) {
  const edit = useRecordEdit<Survey, SurveyDraft>({
    record: survey,
    valuesOf,
    save: ({ purpose, surveyorId, ...rest }, base) =>
      call('updateSurvey', {
        params: { id: survey.id },
        body: { ...rest, surveyorId: surveyorId || null, ...(purpose ? { purpose } : {}) },
        ifMatch: etagOf(base ?? survey),
      }),
    reload: () => call('getSurvey', { params: { id: survey.id } }),
    keepAs: `unsaved:survey:${survey.id}`,
    touches: ['getSurvey', 'listSurveys', 'listEvents'],
    done: () => 'Particulars saved.',
    onDone: onClose,
  });
  const leaving = useLeaveWarning(edit.unsaved, edit.discard);
  if (edit.theirs) {
    return (
      <Merge
        base={valuesOf(edit.base)}
        mine={edit.values}
        theirs={valuesOf(edit.theirs)}
        labels={labels}
        show={(key, values) => showField(key, values, [survey, edit.theirs])}
        busy={edit.busy}
        onSettle={edit.settle}
        onPostpone={edit.postpone}
      />
    );
  }
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        edit.save();
      }}
    >
      <Restored when={edit.restored} onDiscard={edit.discard} />
      <SurveyFields firmId={survey.firmId} draft={edit.values} set={edit.set} error={edit.error} />
      <ErrorNotice error={edit.error} />
      <div className="actions">
        <Button kind="main" type="submit" busy={edit.busy} busyLabel="Saving…">
          Save
        </Button>
        <Button
          onClick={() => {
            edit.discard();
            onClose();
          }}
        >
          Cancel
        </Button>
      </div>
      {leaving.dialog}
    </form>
  );
}
