import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable } from '@garboard/trade/states';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { mayDo } from '../../app/roles.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState, Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { ProgressBar } from '../../ui/ProgressBar.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { ChooseFiles } from './ChooseFiles.tsx';
import { Outcome } from './Outcome.tsx';
import { Preview } from './Preview.tsx';
import { useBringIn } from './useBringIn.ts';

const sending = {
  title: 'Leave while photos are being sent?',
  text: 'The findings come in only once all photos have arrived. Choose the same files again later: nothing comes twice.',
  leave: 'Leave',
};

/** A folder of photos and a sheet of findings become drafts of a survey. */
export default function BringIn({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <BringInto survey={survey} />}</WithSurvey>;
}

function BringInto({ survey }: { survey: Survey }) {
  const able = mayDo('finding.import', survey) && surveyIsEditable(survey.state);
  return (
    <SurveyFrame survey={survey} title="Bring in a survey">
      {able ? (
        <Steps survey={survey} />
      ) : (
        <EmptyState title="Nothing can be brought in here">
          <p>
            {surveyIsEditable(survey.state)
              ? 'Findings are brought in by the firm’s surveyors.'
              : 'This survey is shut. Reopen it first.'}
          </p>
        </EmptyState>
      )}
    </SurveyFrame>
  );
}

function Steps({ survey }: { survey: Survey }) {
  const steps = useBringIn(survey.id);
  const { record, look, start, again } = steps;
  const leaving = useLeaveWarning(steps.sending, () => undefined, sending);
  const answer = record?.data;
  return (
    <div className="stack">
      <ErrorNotice error={look.error ?? again.error} />
      {record?.error && !answer ? (
        <ErrorNotice error={record.error} onRetry={() => void record.refetch()} />
      ) : null}
      {record?.error ? <Button onClick={() => again.run(undefined)}>Choose files again</Button> : null}
      {record?.isPending ? <Loading what="the sheet" /> : null}
      {record ? null : (
        <>
          {steps.lost ? (
            <p className="notice">
              This page was opened anew, and the photos that you had chosen are no longer at hand. Choose them
              and the sheet again.
            </p>
          ) : null}
          {look.busy ? <ProgressBar label="Sending what is to be looked at," value={steps.share} /> : null}
          <ChooseFiles survey={survey} busy={look.busy} onLook={look.run} />
        </>
      )}
      <ErrorNotice error={start.error} />
      {answer && (answer.state === 'checked' || answer.state === 'failed') ? (
        <Preview
          key={answer.id}
          record={answer}
          busy={start.busy}
          onStart={start.run}
          onAgain={() => again.run(undefined)}
        />
      ) : null}
      {steps.sending ? (
        <ProgressBar
          label={`${steps.sent} of ${steps.photos} photos sent,`}
          value={steps.photos ? steps.sent / steps.photos : 0}
        />
      ) : null}
      {answer && steps.underWay ? (
        <div className="stack" role="status">
          <ProgressBar
            label={
              answer.counts.photosDone < answer.counts.photos
                ? `${answer.counts.photosDone} of ${answer.counts.photos} photos taken out of the ZIP,`
                : 'Writing the findings,'
            }
            value={answer.counts.photos ? answer.counts.photosDone / answer.counts.photos : 0}
          />
          <p className="soft">You may leave this page; it goes on by itself.</p>
        </div>
      ) : null}
      {answer?.state === 'done' ? <Outcome record={answer} onAgain={() => again.run(undefined)} /> : null}
      {leaving.dialog}
    </div>
  );
}
