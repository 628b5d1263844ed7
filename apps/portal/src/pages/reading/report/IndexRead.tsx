import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { findingStateLabels, systemLabels } from '@garboard/trade/vocabulary';
import { Table } from '../../../ui/Table.tsx';
import { UrgencyGauge } from '../../../ui/UrgencyGauge.tsx';
import { byUrgency, dueWords, recommendations } from './order.ts';

/** Every finding on one line, most urgent first; `alone` where the document says no more of them. */
export function IndexRead({
  findings,
  alone = false,
}: {
  findings: readonly SnapshotFinding[];
  alone?: boolean;
}) {
  return (
    <section id="index" className="stack">
      <h2>Findings by urgency</h2>
      {findings.length ? null : <p>No findings were recorded.</p>}
      {byUrgency(findings).map((group) => (
        <Table
          key={group.urgency}
          even
          caption={
            <span className="group-caption">
              <UrgencyGauge urgency={group.urgency} />
            </span>
          }
          rows={group.findings}
          rowKey={(finding) => finding.id}
          columns={[
            {
              key: 'finding',
              heading: 'Finding',
              cell: (f) => (
                <span id={`index-${f.number}`} dir="auto">
                  {f.number}. {alone ? f.title : <a href={`#finding-${f.number}`}>{f.title}</a>}
                </span>
              ),
            },
            { key: 'system', heading: 'System', cell: (f) => systemLabels[f.system] },
            { key: 'due', heading: 'Put right by', cell: dueWords },
            {
              key: 'state',
              heading: 'State',
              cell: (f) => (f.state === 'open' ? null : findingStateLabels[f.state]),
            },
          ]}
        />
      ))}
    </section>
  );
}

/** Every recommendation in the order in which it falls due. */
export function WorkRead({ findings }: { findings: readonly SnapshotFinding[] }) {
  const items = recommendations(findings);
  return (
    <section id="work" className="stack">
      <h2>What to do, and by when</h2>
      {items.length ? (
        <Table
          caption="In the order in which it falls due"
          rows={items}
          rowKey={(finding) => finding.id}
          columns={[
            {
              key: 'what',
              heading: 'What to do',
              cell: (f) => (
                <>
                  {f.number}.{' '}
                  <a href={`#finding-${f.number}`} dir="auto">
                    {f.title}
                  </a>
                  <small className="text" dir="auto">
                    {f.recommendation}
                  </small>
                </>
              ),
            },
            { key: 'due', heading: 'Put right by', cell: dueWords },
          ]}
        />
      ) : (
        <p>No work is recommended.</p>
      )}
    </section>
  );
}
