import { purposeLabels } from '@garboard/trade/vocabulary';
import type { CallArgs } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useWholeList } from '../../api/queries.ts';
import { Checkbox, RadioGroup, SelectField, TextArea, TextField } from '../../ui/Field.tsx';

type Body = CallArgs<'createSurvey'>['body'];
/** The particulars of a survey as they are written in a form. */
export type SurveyDraft = Required<
  Pick<Body, 'requestedBy' | 'scope' | 'limitations' | 'timeZone' | 'clearanceDecidedBy' | 'printCosts'>
> & { purpose: Body['purpose'] | ''; surveyorId: string };

const decidedByLabels = {
  insurer: 'The insurer, once invited to the survey',
  surveyor: 'The surveyor',
} as const;

/** The reader's own zone is the likeliest place of the survey. */
export function emptySurvey(surveyorId = ''): SurveyDraft {
  return {
    purpose: '',
    surveyorId,
    requestedBy: '',
    scope: '',
    limitations: '',
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC',
    clearanceDecidedBy: 'insurer',
    printCosts: false,
  };
}

/** The fields of a survey, for a new one and for editing. */
export function SurveyFields({
  firmId,
  draft,
  set,
  error,
}: {
  firmId: string;
  draft: SurveyDraft;
  set: (change: Partial<SurveyDraft>) => void;
  error: unknown;
}) {
  return (
    <>
      <div className="fields-2">
        <SelectField
          label="Purpose"
          required
          value={draft.purpose}
          options={purposeLabels}
          empty="Choose the purpose"
          onChange={(purpose) => set({ purpose })}
          error={fieldError(error, '/purpose')}
        />
        <TextField
          label="Asked for by"
          optional
          maxLength={200}
          value={draft.requestedBy}
          onChange={(requestedBy) => set({ requestedBy })}
          error={fieldError(error, '/requestedBy')}
        />
      </div>
      <SurveyorField
        firmId={firmId}
        value={draft.surveyorId}
        onChange={(surveyorId) => set({ surveyorId })}
        error={fieldError(error, '/surveyorId')}
      />
      <TextArea
        label="Scope"
        hint="What was agreed to be looked at, and by which means."
        value={draft.scope}
        onChange={(scope) => set({ scope })}
        error={fieldError(error, '/scope')}
      />
      <TextArea
        label="Limitations"
        hint="What could not be reached, opened, tested or seen, and why."
        value={draft.limitations}
        onChange={(limitations) => set({ limitations })}
        error={fieldError(error, '/limitations')}
      />
      <TimeZoneField
        value={draft.timeZone}
        onChange={(timeZone) => set({ timeZone })}
        error={fieldError(error, '/timeZone')}
      />
      <RadioGroup
        label="Who decides whether a recommendation is cleared"
        name="decided-by"
        value={draft.clearanceDecidedBy}
        options={decidedByLabels}
        onChange={(clearanceDecidedBy) => set({ clearanceDecidedBy })}
      />
      <Checkbox
        label="Print what putting findings right may cost, and show it to those who may read the report"
        checked={draft.printCosts}
        onChange={(printCosts) => set({ printCosts })}
      />
    </>
  );
}

/** Those of the firm who may sign; the office can't. */
function SurveyorField({
  firmId,
  value,
  onChange,
  error,
}: {
  firmId: string;
  value: string;
  onChange: (id: string) => void;
  error: string | undefined;
}) {
  const members = useWholeList('listMembers', { params: { id: firmId } });
  const signing = (members.data ?? []).filter((member) => member.role !== 'office');
  return (
    <SelectField
      label="Surveyor who signs"
      value={value}
      options={Object.fromEntries(signing.map((member) => [member.id, member.name]))}
      empty="Not named yet"
      onChange={onChange}
      error={error}
    />
  );
}

function TimeZoneField({
  value,
  onChange,
  error,
}: {
  value: string;
  onChange: (zone: string) => void;
  error: string | undefined;
}) {
  const known = Intl.supportedValuesOf('timeZone');
  const zones = known.includes(value) ? known : [value, ...known];
  return (
    <SelectField
      label="Time zone of the survey"
      hint="Times in the report and the histories are given in it."
      value={value}
      options={Object.fromEntries(zones.map((zone) => [zone, zone.replaceAll('_', ' ')]))}
      onChange={onChange}
      error={error}
    />
  );
}
