import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { decidedFindingStates } from '@garboard/trade/states';
import { Link } from 'wouter';
import { useWholeList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count } from '../../ui/format.ts';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { DueDate, UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { stateWords } from './stateWords.ts';
import { Visits } from './visit/Visits.tsx';

const columns: Column<Finding>[] = [
  {
    key: 'title',
    heading: 'Finding',
    cell: (finding) => (
      <>
        {finding.number}.{' '}
        <Link href={`/findings/${finding.id}`} dir="auto">
          {finding.title}
        </Link>
      </>
    ),
  },
  {
    key: 'urgency',
    heading: 'How soon',
    cell: (finding) => <UrgencyGauge urgency={finding.urgency} withinDays={finding.withinDays} />,
  },
  { key: 'state', heading: 'State', cell: (finding) => stateWords(finding) },
  {
    key: 'due',
    heading: 'Due',
    cell: (finding) => <DueDate dueOn={finding.dueOn} overdue={finding.overdue} />,
  },
];

/** How clearance stands, for the firm: what is left, what was decided, and the visits after the report. */
export default function ClearancePage({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <ClearanceOf survey={survey} />}</WithSurvey>;
}

function ClearanceOf({ survey }: { survey: Survey }) {
  const findings = useWholeList('listFindings', { params: { id: survey.id } });
  const toClear = findings.data?.filter((finding) => finding.requiresClearing && finding.state !== 'draft');
  const left = toClear?.filter((finding) => !decidedFindingStates.includes(finding.state)) ?? [];
  const decided = toClear?.filter((finding) => decidedFindingStates.includes(finding.state)) ?? [];
  const visit =
    mayDo('finding.re-inspect', survey) && findings.data?.some((finding) => finding.may.reInspect);
  return (
    <SurveyFrame
      survey={survey}
      title="Clearance"
      action={
        visit ? (
          <ButtonLink kind="main" href={`/surveys/${survey.id}/re-inspection`}>
            Record a re-inspection
          </ButtonLink>
        ) : null
      }
    >
      <div className="stack-wide">
        {findings.isPending ? <Loading what="the findings" /> : null}
        <ErrorNotice quiet error={findings.error} onRetry={() => void findings.refetch()} />
        {toClear && !toClear.length ? (
          <EmptyState title="Nothing to clear">
            <p>Once the report is issued, its findings that require clearing are followed here.</p>
          </EmptyState>
        ) : null}
        {left.length ? (
          <Table
            even
            caption={`${count(left.length, 'finding')} left, decided on by the ${survey.clearanceDecidedBy}`}
            columns={columns}
            rows={left}
            rowKey={(finding) => finding.id}
          />
        ) : null}
        {toClear?.length && !left.length ? (
          <p>Every finding that required clearing has been decided.</p>
        ) : null}
        {decided.length ? (
          <Table
            even
            caption={`${count(decided.length, 'finding')} decided`}
            columns={columns}
            rows={decided}
            rowKey={(finding) => finding.id}
          />
        ) : null}
        {toClear?.length ? (
          <p>
            <Link href={`/surveys/${survey.id}/report`}>
              {left.length ? 'Issue a status letter' : 'Issue the clearance letter'}
            </Link>
          </p>
        ) : null}
        <Visits survey={survey} />
      </div>
    </SurveyFrame>
  );
}
