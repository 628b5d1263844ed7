import type { Coverage as Answers, CoverageItem } from '@garboard/contract/coverage';
import type { Survey } from '@garboard/contract/surveys';
import { reaches, reachLabels } from '@garboard/trade/coverage';
import { systemLabels } from '@garboard/trade/vocabulary';
import { useCallback, useState } from 'react';
import { Link } from 'wouter';
import { useAnswer } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { count } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { CoverageRow, reachKeys } from './CoverageRow.tsx';
import { MarkRest } from './MarkRest.tsx';

/** How far each system was reached: what the report prints as the scope achieved. */
export default function Coverage({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <CoverageOf survey={survey} />}</WithSurvey>;
}

function CoverageOf({ survey }: { survey: Survey }) {
  const coverage = useAnswer('getCoverage', { params: { id: survey.id } });
  const { data } = coverage;
  return (
    <SurveyFrame
      survey={survey}
      title="Coverage"
      action={data?.may.edit ? <MarkRest surveyId={survey.id} coverage={data} /> : null}
    >
      {data ? (
        data.may.edit ? (
          <Editor survey={survey} coverage={data} />
        ) : (
          <Reader items={data.items.filter((item) => item.asked || item.reached)} />
        )
      ) : coverage.error ? (
        <ErrorNotice error={coverage.error} onRetry={() => void coverage.refetch()} />
      ) : (
        <Loading what="the coverage" />
      )}
    </SurveyFrame>
  );
}

function Editor({ survey, coverage }: { survey: Survey; coverage: Answers }) {
  const [unsaved, setUnsaved] = useState<readonly string[]>([]);
  const note = useCallback((system: string, is: boolean) => {
    setUnsaved((now) => [...now.filter((one) => one !== system), ...(is ? [system] : [])]);
  }, []);
  const leaving = useLeaveWarning(unsaved.length > 0, () => undefined);
  const asked = coverage.items.filter((item) => item.asked);
  const others = coverage.items.filter((item) => !item.asked);
  const open = coverage.unanswered.length;
  const table = (items: readonly CoverageItem[], caption: string) => (
    <AnswerTable survey={survey} items={items} caption={caption} onUnsaved={note} />
  );
  return (
    <div className="stack">
      <p className="measure">
        The report prints this as the scope achieved; it can’t be issued while a system is unanswered. Each
        answer is saved by itself.{' '}
        <span className="keys-hint">
          With the focus on a row, a letter answers it and moves on:{' '}
          {reaches.map((reached) => `${reachKeys[reached]} ${reachLabels[reached].toLowerCase()}`).join(', ')}
          .
        </span>
      </p>
      <p role="status">
        <strong>{open ? `${count(open, 'system')} not answered yet` : 'Every system is answered'}</strong>
      </p>
      {asked.length ? table(asked, 'Systems that this survey answers for') : null}
      {others.length ? (
        <details open={!asked.length || others.some((item) => item.reached)}>
          <summary>Systems that nobody asked about, {others.length}</summary>
          {table(others, 'May be answered as well; those left open are not printed')}
        </details>
      ) : null}
      {open ? null : (
        // Where the hand is after the last answer.
        <p>
          <Link href={`/surveys/${survey.id}/report`}>Go on to the report</Link>
        </p>
      )}
      {leaving.dialog}
    </div>
  );
}

function AnswerTable({
  survey,
  items,
  caption,
  onUnsaved,
}: {
  survey: Survey;
  items: readonly CoverageItem[];
  caption: string;
  onUnsaved: (system: string, unsaved: boolean) => void;
}) {
  return (
    <table className="table coverage-table">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">System</th>
          <th scope="col">Reached</th>
          <th scope="col">Why, and looked at from where</th>
        </tr>
      </thead>
      <tbody>
        {items.map((item) => (
          <Row key={item.system} surveyId={survey.id} item={item} onUnsaved={onUnsaved} />
        ))}
      </tbody>
    </table>
  );
}

function Row({
  surveyId,
  item,
  onUnsaved,
}: {
  surveyId: string;
  item: CoverageItem;
  onUnsaved: (system: string, unsaved: boolean) => void;
}) {
  const { system } = item;
  const note = useCallback((is: boolean) => onUnsaved(system, is), [onUnsaved, system]);
  return <CoverageRow surveyId={surveyId} item={item} onUnsaved={note} />;
}

function Reader({ items }: { items: readonly CoverageItem[] }) {
  return (
    <Table
      caption="How far each system was reached"
      rows={items}
      rowKey={(item) => item.system}
      columns={[
        { key: 'system', heading: 'System', cell: (item) => systemLabels[item.system] },
        {
          key: 'reached',
          heading: 'Reached',
          align: 'tight',
          cell: ({ reached }) => (reached ? reachLabels[reached] : 'Not answered'),
        },
        { key: 'reason', heading: 'Why', cell: (item) => item.reason },
        { key: 'from', heading: 'Looked at from', cell: (item) => item.lookedFrom },
      ]}
    />
  );
}
