import { useList, useWholeList } from '../../api/queries.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { EventSteps } from './EventSteps.tsx';
import { SurveyFrame, WithSurvey } from './SurveyFrame.tsx';

/** Who did what and when, newest first. */
export default function History({ id }: { id: string }) {
  const list = useList('listEvents', { params: { id } });
  const findings = useWholeList('listFindings', { params: { id } });
  return (
    <WithSurvey id={id}>
      {(survey) => (
        <SurveyFrame survey={survey} title="History">
          <MoreList list={list} what="the history" empty={<p>Nothing has happened yet.</p>}>
            {(events) => <EventSteps events={events} timeZone={survey.timeZone} findings={findings.data} />}
          </MoreList>
        </SurveyFrame>
      )}
    </WithSurvey>
  );
}
