import type { SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { reachLabels } from '@garboard/trade/coverage';
import { systemLabels } from '@garboard/trade/vocabulary';
import { Table } from '../../../ui/Table.tsx';

/** How far each system was reached, and why not wholly. */
export function CoverageRead({ snapshot: { coverage } }: { snapshot: SurveyReportSnapshot }) {
  if (!coverage.length) return null;
  return (
    <section id="coverage" className="stack">
      <h2>What was reached</h2>
      <Table
        caption="How far each system was reached"
        rows={coverage}
        rowKey={(item) => item.system}
        columns={[
          { key: 'system', heading: 'System', cell: (item) => systemLabels[item.system] },
          { key: 'reached', heading: 'Reached', cell: (item) => reachLabels[item.reached] },
          { key: 'reason', heading: 'Why', cell: (item) => item.reason },
          { key: 'from', heading: 'Looked at from', cell: (item) => item.lookedFrom },
        ]}
      />
    </section>
  );
}
