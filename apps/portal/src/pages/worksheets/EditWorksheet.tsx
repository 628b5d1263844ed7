import { isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { ResultView } from './ResultView.tsx';
import { WorksheetEditor } from './WorksheetEditor.tsx';

/** Changes a worksheet, or shows what it says to those who may not. */
export default function EditWorksheet({ surveyId, worksheetId }: { surveyId: string; worksheetId: string }) {
  const worksheet = useAnswer('getWorksheet', { params: { id: worksheetId } }, { anew: true });
  const kind = useAnswer(
    'getWorksheetKind',
    { params: { kind: worksheet.data?.kind ?? '' } },
    { enabled: Boolean(worksheet.data?.may.edit) },
  );
  if (isStatus(worksheet.error, 404) || isStatus(worksheet.error, 422)) return <NotFound />;
  const error = worksheet.error ?? kind.error;
  if (error) return <ErrorNotice error={error} />;
  if (!(worksheet.data && worksheet.isFetchedAfterMount)) return <Loading what="the worksheet" />;
  const [found, description] = [worksheet.data, kind.data];
  if (found.may.edit && !description) return <Loading what="the worksheet" />;
  return (
    <WithSurvey id={surveyId}>
      {(survey) =>
        found.may.edit && description ? (
          <WorksheetEditor survey={survey} kind={description} worksheet={found} />
        ) : (
          <SurveyFrame survey={survey} title={found.title}>
            <ResultView result={found.result} withInputs level={2} />
          </SurveyFrame>
        )
      }
    </WithSurvey>
  );
}
