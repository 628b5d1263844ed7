import { isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { WithSurvey } from '../surveys/SurveyFrame.tsx';
import { WorksheetEditor } from './WorksheetEditor.tsx';

/** Fills in a new worksheet of a kind. */
export default function NewWorksheet({ surveyId, kind }: { surveyId: string; kind: string }) {
  const description = useAnswer('getWorksheetKind', { params: { kind } });
  if (isStatus(description.error, 404)) return <NotFound />;
  if (description.error) return <ErrorNotice error={description.error} />;
  if (!description.data) return <Loading what="the worksheet" />;
  const { data } = description;
  return (
    <WithSurvey id={surveyId}>
      {(survey) => <WorksheetEditor survey={survey} kind={data} worksheet={null} />}
    </WithSurvey>
  );
}
