import { etagOf } from '@garboard/contract/client';
import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable, surveyMayMove } from '@garboard/trade/states';
import type { SurveyState } from '@garboard/trade/vocabulary';
import { purposeLabels, surveyStateLabels, surveyStates } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { Link } from 'wouter';
import { call } from '../../api/client.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { formatInstant } from '../../ui/format.ts';
import { vesselFacts } from '../vessels/vesselWords.ts';
import { ParticularsEditor } from './ParticularsEditor.tsx';
import { SurveyFrame } from './SurveyFrame.tsx';

/** What the survey is about, and where it stands. */
export function Particulars({ survey }: { survey: Survey }) {
  const [editing, setEditing] = useState(false);
  const vessel = useAnswer('getVessel', { params: { id: survey.vesselId } });
  if (editing) {
    return (
      <SurveyFrame survey={survey} title="Edit particulars">
        <ParticularsEditor survey={survey} onClose={() => setEditing(false)} />
      </SurveyFrame>
    );
  }
  return (
    <SurveyFrame
      survey={survey}
      title="Particulars"
      action={
        surveyIsEditable(survey.state) ? (
          <Button kind="main" onClick={() => setEditing(true)}>
            Edit particulars
          </Button>
        ) : null
      }
    >
      <div className="stack-wide">
        <Facts
          facts={[
            ['Purpose', purposeLabels[survey.purpose]],
            ['Asked for by', survey.requestedBy || 'Not stated'],
            ['Surveyor', survey.surveyorName ?? 'Not named'],
            ['Scope', <Text key="scope" text={survey.scope} />],
            ['Limitations', <Text key="limitations" text={survey.limitations} />],
            ['Time zone', survey.timeZone.replaceAll('_', ' ')],
            [
              'Clearance decided by',
              survey.clearanceDecidedBy === 'insurer' ? 'The insurer' : 'The surveyor',
            ],
            ['Costs in the report', survey.printCosts ? 'Printed' : 'Not printed'],
            ['Begun', formatInstant(survey.createdAt, survey.timeZone)],
            ['Issued', survey.issuedAt ? formatInstant(survey.issuedAt, survey.timeZone) : 'Not yet'],
          ]}
        />
        <MoveOn key={survey.state} survey={survey} />
        <section className="stack">
          <h2>Vessel</h2>
          <ErrorNotice quiet error={vessel.error} />
          {vessel.data ? (
            <Facts
              facts={[
                [
                  'Name',
                  <Link key="name" href={`/vessels/${survey.vesselId}`}>
                    {vessel.data.name}
                  </Link>,
                ],
                ...vesselFacts(vessel.data),
              ]}
            />
          ) : null}
        </section>
      </div>
    </SurveyFrame>
  );
}

function Text({ text }: { text: string }) {
  return text ? <div className="text">{text}</div> : <span className="soft">Nothing written yet</span>;
}

function MoveOn({ survey }: { survey: Survey }) {
  const choices = surveyStates.filter(
    (state) => state !== survey.state && surveyMayMove(survey.state, state),
  );
  const [state, setState] = useState<SurveyState | ''>('');
  const move = useAction({
    run: (to: SurveyState) =>
      call('updateSurvey', { params: { id: survey.id }, body: { state: to }, ifMatch: etagOf(survey) }),
    done: (saved) => `The survey is now: ${surveyStateLabels[saved.state]}.`,
    touches: ['getSurvey', 'listSurveys', 'listEvents'],
  });
  if (!choices.length) return null;
  return (
    <section className="stack">
      <h2>Where it stands</h2>
      <p>
        {surveyStateLabels[survey.state]}
        {survey.state === 'issued' ? '.' : '. It becomes issued when the report is issued.'}
      </p>
      <ErrorNotice error={move.error} />
      <form
        className="row row-end"
        onSubmit={(event) => {
          event.preventDefault();
          if (state) move.run(state);
        }}
      >
        <SelectField
          label="Move it to"
          value={state}
          empty="Choose"
          options={
            Object.fromEntries(choices.map((choice) => [choice, surveyStateLabels[choice]])) as Record<
              SurveyState,
              string
            >
          }
          onChange={setState}
        />
        <Button type="submit" disabled={!state} busy={move.busy}>
          Move
        </Button>
      </form>
    </section>
  );
}
