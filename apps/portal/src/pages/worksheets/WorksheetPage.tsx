import { Link } from 'wouter';
import { isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Page } from '../../ui/Page.tsx';
import { WithSurvey } from '../surveys/SurveyFrame.tsx';
import { ResultView } from './ResultView.tsx';

/** A worksheet to be read: what it says, how it was worked and by which source. */
export default function WorksheetPage({ id }: { id: string }) {
  const worksheet = useAnswer('getWorksheet', { params: { id } });
  if (isStatus(worksheet.error, 404) || isStatus(worksheet.error, 422)) return <NotFound />;
  if (worksheet.error)
    return <ErrorNotice error={worksheet.error} onRetry={() => void worksheet.refetch()} />;
  if (!worksheet.data) return <Loading what="the worksheet" />;
  const found = worksheet.data;
  const named = found.title !== found.result.title;
  return (
    <WithSurvey id={found.surveyId}>
      {(survey) => (
        <Page
          title={found.title}
          windowTitle={`${found.title}, ${survey.vesselName} ${survey.number}`}
          over={
            <Link href={found.findingId ? `/findings/${found.findingId}` : `/surveys/${survey.id}`}>
              {survey.vesselName}, {survey.number}
            </Link>
          }
          under={named ? found.result.title : undefined}
        >
          <ResultView result={found.result} withInputs level={2} />
        </Page>
      )}
    </WithSurvey>
  );
}
