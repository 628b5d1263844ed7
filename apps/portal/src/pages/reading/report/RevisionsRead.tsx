import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { formatInstantDay } from '../../../ui/format.ts';
import { Table } from '../../../ui/Table.tsx';
import { ChangeList } from '../../reports/ChangeList.tsx';

/** Every revision of the document so far, and what this one changes. */
export function RevisionsRead({ snapshot }: { snapshot: ReportSnapshot }) {
  const { revisions, changes, timeZone } = snapshot;
  if (!revisions.length && !changes) return null;
  return (
    <section id="revisions" className="stack">
      <h2>Revisions</h2>
      <Table
        caption="Revisions of this document"
        rows={revisions}
        rowKey={(row) => String(row.revision)}
        columns={[
          { key: 'revision', heading: 'Revision', cell: (row) => row.revision },
          { key: 'issued', heading: 'Issued', cell: (row) => formatInstantDay(row.issuedAt, timeZone) },
          { key: 'hash', heading: 'SHA-256 of the file', cell: (row) => row.sha256 ?? 'This document' },
        ]}
      />
      {changes ? (
        <ChangeList changes={changes} caption={`What differs from revision ${changes.against}`} />
      ) : null}
    </section>
  );
}
