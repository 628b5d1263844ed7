import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable } from '@garboard/trade/states';
import { findingStateLabels, systemLabels } from '@garboard/trade/vocabulary';
import { useQueryClient } from '@tanstack/react-query';
import { Link } from 'wouter';
import { call } from '../../api/client.ts';
import { useAction, useWholeList } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';

/** The findings in the order of the report, which can be changed here. */
export default function Findings({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <FindingsOf survey={survey} />}</WithSurvey>;
}

interface Move {
  id: string;
  by: 1 | -1;
}

function FindingsOf({ survey }: { survey: Survey }) {
  const writable = surveyIsEditable(survey.state) && mayDo('finding.write', survey);
  const args = { params: { id: survey.id } };
  const queryClient = useQueryClient();
  const findings = useWholeList('listFindings', args);
  const move = useAction({
    run: async ({ id, by }: Move) => {
      // From what is on the screen now, not from when the button was drawn: the key may be held down.
      const key = ['listFindings', args, 'whole'];
      const before = queryClient.getQueryData<Finding[]>(key) ?? [];
      const after = moved(before, id, by);
      queryClient.setQueryData(key, after);
      try {
        await call('orderFindings', { ...args, body: { ids: after.map((finding) => finding.id) } });
      } catch (error) {
        queryClient.setQueryData(key, before);
        throw error;
      }
      return after;
    },
    done: (after, { id }) => `Now number ${after.findIndex((finding) => finding.id === id) + 1}.`,
    touches: ['listFindings', 'getFinding'],
  });
  const all = findings.data;
  return (
    <SurveyFrame
      survey={survey}
      title="Findings"
      action={
        writable ? (
          <ButtonLink kind="main" href={`/surveys/${survey.id}/findings/new`}>
            Record a finding
          </ButtonLink>
        ) : null
      }
    >
      <div className="stack">
        <ErrorNotice error={move.error} />
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
                    {at + 1}. <Link href={findingPath(finding)}>{finding.title}</Link>
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
      </div>
    </SurveyFrame>
  );
}

function findingPath(finding: Finding): string {
  return finding.state === 'draft' && finding.may.edit
    ? `/surveys/${finding.surveyId}/findings/${finding.id}/edit`
    : `/findings/${finding.id}`;
}

function moved(findings: Finding[], id: string, by: number): Finding[] {
  const from = findings.findIndex((finding) => finding.id === id);
  const to = from + by;
  const [finding, other] = [findings[from], findings[to]];
  if (!finding || !other) return findings;
  const after = [...findings];
  after[from] = other;
  after[to] = finding;
  return after;
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
