import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import type { Urgency } from '@garboard/trade/vocabulary';
import {
  findingStateLabels,
  findingStates,
  systemLabels,
  urgencies,
  urgencyLabels,
} from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { useWholeList } from '../../api/queries.ts';
import { oneOf, useFilters } from '../../app/filters.ts';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { count } from '../../ui/format.ts';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { DueDate, UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { stateWords } from '../clearance/stateWords.ts';
import { CostTotals } from '../findings/CostTotals.tsx';

const { draft: _draft, ...issuedStateLabels } = findingStateLabels;
const issuedStates = findingStates.filter((state) => state !== 'draft');

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
        <small>{systemLabels[finding.system]}</small>
      </>
    ),
  },
  { key: 'state', heading: 'State', cell: (finding) => stateWords(finding) },
  {
    key: 'due',
    heading: 'Due',
    cell: (finding) =>
      finding.requiresClearing ? <DueDate dueOn={finding.dueOn} overdue={finding.overdue} /> : null,
  },
];

/** The issued findings, the most urgent first, narrowed by urgency and state from the address. */
export function ReadingFindings({ survey }: { survey: Survey }) {
  const [filter, setFilter] = useFilters();
  const urgency = oneOf(filter('urgency'), urgencies);
  const state = oneOf(filter('state'), issuedStates);
  const findings = useWholeList('listFindings', { params: { id: survey.id } });
  if (!findings.data) {
    return findings.error ? (
      <ErrorNotice quiet error={findings.error} onRetry={() => void findings.refetch()} />
    ) : (
      <Loading what="the findings" />
    );
  }
  // The list is whole already; narrowing it here answers at once.
  const issued = findings.data.filter((finding) => finding.state !== 'draft');
  const shown = issued.filter(
    (finding) => (!urgency || finding.urgency === urgency) && (!state || finding.state === state),
  );
  return (
    <section className="stack">
      <h2>Findings</h2>
      <search className="filters">
        <SelectField
          label="Urgency"
          value={urgency ?? ''}
          options={urgencyLabels}
          empty="Any urgency"
          onChange={(value) => setFilter('urgency', value)}
        />
        <SelectField
          label="State"
          value={state ?? ''}
          options={issuedStateLabels}
          empty="Any state"
          onChange={(value) => setFilter('state', value)}
        />
      </search>
      <p className="soft" role="status">
        {shown.length === issued.length
          ? count(issued.length, 'finding')
          : `${shown.length} of ${count(issued.length, 'finding')}`}
      </p>
      {urgencies.map((group) => (
        <Group key={group} urgency={group} findings={shown.filter((f) => f.urgency === group)} />
      ))}
      {survey.printCosts ? <CostTotals survey={survey} /> : null}
      {shown.length ? null : <p>No finding matches. Choose another urgency or state.</p>}
    </section>
  );
}

function Group({ urgency, findings }: { urgency: Urgency; findings: Finding[] }) {
  if (!findings.length) return null;
  return (
    <Table
      even
      caption={
        <span className="group-caption">
          <UrgencyGauge urgency={urgency} /> <span>{count(findings.length, 'finding')}</span>
        </span>
      }
      columns={columns}
      rows={findings}
      rowKey={(finding) => finding.id}
    />
  );
}
