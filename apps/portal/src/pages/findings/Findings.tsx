import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable } from '@garboard/trade/states';
import { findingStateLabels, systemLabels } from '@garboard/trade/vocabulary';
import { Link, useLocation, useSearch } from 'wouter';
import { useWholeList } from '../../api/queries.ts';
import { useKeys } from '../../app/keys.ts';
import { mayDo } from '../../app/roles.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { CostTotals } from './CostTotals.tsx';
import { DeletedFindings } from './DeletedFindings.tsx';
import { findingPath, useFindingOrder } from './findingOrder.ts';
import { RelatedEntries } from './RelatedEntries.tsx';

/** The findings in the order of the report, which can be changed here. */
export default function Findings({ id }: { id: string }) {
  // Asked for together with the survey, not after it: on a slow line one wait instead of two.
  useWholeList('listFindings', { params: { id } });
  return <WithSurvey id={id}>{(survey) => <FindingsOf survey={survey} />}</WithSurvey>;
}

function FindingsOf({ survey }: { survey: Survey }) {
  const writable = surveyIsEditable(survey.state) && mayDo('finding.write', survey);
  const [, go] = useLocation();
  const after = new URLSearchParams(useSearch()).get('after');
  const { findings, move } = useFindingOrder(survey.id);
  const shift = (by: 1 | -1) => (at: Element | null) => {
    const id = at?.closest('tr')?.querySelector('[data-finding]')?.getAttribute('data-finding');
    if (id) move.run({ id, by });
  };
  useKeys(
    writable
      ? {
          'record-next': () => go(`/surveys/${survey.id}/findings/new`),
          'move-up': shift(-1),
          'move-down': shift(1),
        }
      : {},
  );
  const all = findings.data;
  return (
    <SurveyFrame
      survey={survey}
      title="Findings"
      action={
        writable ? (
          <>
            <ButtonLink href={`/surveys/${survey.id}/bring-in`}>Bring in a survey</ButtonLink>
            <ButtonLink kind="main" href={`/surveys/${survey.id}/findings/new`}>
              Record a finding
            </ButtonLink>
          </>
        ) : null
      }
    >
      <div className="stack">
        <ErrorNotice error={move.error} />
        {after && all && writable ? <RelatedEntries survey={survey} findings={all} after={after} /> : null}
        {findings.error && !all ? (
          <ErrorNotice quiet error={findings.error} onRetry={() => void findings.refetch()} />
        ) : null}
        {findings.isPending ? <Loading what="the findings" /> : null}
        {all && !all.length ? (
          <EmptyState title="No findings yet">
            <p>A report needs at least one. Record what was seen, why it matters and what to do about it.</p>
          </EmptyState>
        ) : null}
        {all?.length ? (
          <Table
            caption="In the order of the report"
            rows={all.map((finding, at) => ({ finding, at }))}
            rowKey={({ finding }) => finding.id}
            columns={[
              {
                key: 'title',
                heading: 'Finding',
                cell: ({ finding, at }) => (
                  <>
                    <span data-finding={finding.id}>{at + 1}. </span>
                    <Link href={findingPath(finding)} dir="auto">
                      {finding.title}
                    </Link>
                    <small>{systemLabels[finding.system]}</small>
                  </>
                ),
              },
              {
                key: 'urgency',
                heading: 'Urgency',
                cell: ({ finding }) => (
                  <UrgencyGauge urgency={finding.urgency} withinDays={finding.withinDays} />
                ),
              },
              { key: 'state', heading: 'State', cell: ({ finding }) => findingStateLabels[finding.state] },
              {
                key: 'photos',
                heading: 'Photos',
                cell: ({ finding }) =>
                  finding.photoIds.length ? count(finding.photoIds.length, 'photo') : 'None',
              },
              ...(writable
                ? [
                    {
                      key: 'order',
                      heading: 'Order',
                      cell: ({ finding, at }: { finding: Finding; at: number }) => (
                        <MoveButtons
                          title={finding.title}
                          first={at === 0}
                          last={at === all.length - 1}
                          onMove={(by) => move.run({ id: finding.id, by })}
                        />
                      ),
                    },
                  ]
                : []),
            ]}
          />
        ) : null}
        <CostTotals survey={survey} />
        <DeletedFindings survey={survey} writable={writable} />
      </div>
    </SurveyFrame>
  );
}

/** Up and down by one. They stay focusable at the ends, so that the focus isn't lost on the way. */
export function MoveButtons({
  title,
  first,
  last,
  onMove,
}: {
  title: string;
  first: boolean;
  last: boolean;
  onMove: (by: 1 | -1) => void;
}) {
  return (
    <div className="row">
      <Button
        kind="quiet"
        aria-label={`Move up: ${title}`}
        aria-disabled={first || undefined}
        onClick={() => {
          if (!first) onMove(-1);
        }}
      >
        Move up
      </Button>
      <Button
        kind="quiet"
        aria-label={`Move down: ${title}`}
        aria-disabled={last || undefined}
        onClick={() => {
          if (!last) onMove(1);
        }}
      >
        Move down
      </Button>
    </div>
  );
}
