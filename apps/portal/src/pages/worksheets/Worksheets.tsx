import type { Survey } from '@garboard/contract/surveys';
import type { WorksheetListed } from '@garboard/contract/worksheets';
import { surveyIsEditable } from '@garboard/trade/states';
import { systemLabels, verdictLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { useWholeList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Table } from '../../ui/Table.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';

/** The measurements of a survey: what was worked out, what it says, and where it is printed. */
export default function Worksheets({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <WorksheetsOf survey={survey} />}</WithSurvey>;
}

function WorksheetsOf({ survey }: { survey: Survey }) {
  const writable = surveyIsEditable(survey.state) && mayDo('finding.write', survey);
  const worksheets = useWholeList('listWorksheets', { params: { id: survey.id } });
  const findings = useWholeList('listFindings', { params: { id: survey.id } });
  const findingOf = (worksheet: WorksheetListed) =>
    findings.data?.find((finding) => finding.id === worksheet.findingId);
  const all = worksheets.data;
  return (
    <SurveyFrame
      survey={survey}
      title="Measurements"
      action={
        writable ? (
          <ButtonLink kind="main" href={`/surveys/${survey.id}/worksheets/new`}>
            Fill in a worksheet
          </ButtonLink>
        ) : null
      }
    >
      <div className="stack">
        {worksheets.error && !all ? (
          <ErrorNotice quiet error={worksheets.error} onRetry={() => void worksheets.refetch()} />
        ) : null}
        {worksheets.isPending ? <Loading what="the measurements" /> : null}
        {all && !all.length ? (
          <EmptyState title="Nothing measured yet">
            <p>
              A worksheet turns readings into a judgement with its working and its source: a gas test, a
              moisture map, a worn shaft, a market value.
            </p>
          </EmptyState>
        ) : null}
        {all?.length ? (
          <Table
            caption="In the order they were begun"
            rows={all}
            rowKey={(worksheet) => worksheet.id}
            columns={[
              {
                key: 'title',
                heading: 'Worksheet',
                cell: (worksheet) => (
                  <>
                    <Link href={`/surveys/${survey.id}/worksheets/${worksheet.id}`}>{worksheet.title}</Link>
                    <small>{systemLabels[worksheet.system]}</small>
                  </>
                ),
              },
              {
                key: 'verdict',
                align: 'tight',
                heading: 'Verdict',
                cell: ({ verdict }) =>
                  verdict === 'unsatisfactory' ? (
                    <strong>{verdictLabels[verdict]}</strong>
                  ) : (
                    verdictLabels[verdict]
                  ),
              },
              { key: 'reason', heading: 'Why', cell: ({ reasons }) => reasons[0] ?? '' },
              {
                key: 'finding',
                heading: 'Finding',
                cell: (worksheet) => {
                  const finding = findingOf(worksheet);
                  if (!worksheet.findingId) return 'None';
                  return finding ? `${finding.number}. ${finding.title}` : '';
                },
              },
              {
                key: 'printed',
                heading: 'In the report',
                cell: ({ printed }) => (printed ? 'Yes' : 'No'),
              },
            ]}
          />
        ) : null}
      </div>
    </SurveyFrame>
  );
}
