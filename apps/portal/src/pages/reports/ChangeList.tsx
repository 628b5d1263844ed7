import type { SnapshotChanges } from '@garboard/contract/report-snapshot';
import { Table } from '../../ui/Table.tsx';

/** Findings that differ from an earlier revision, and what became of each. */
export function ChangeList({ changes, caption }: { changes: SnapshotChanges; caption: string }) {
  const rows = [
    ...changes.added.map((f) => ({ ...f, how: 'Added' })),
    ...changes.changed.map((f) => ({
      ...f,
      how: f.what.length ? `Changed: ${f.what.join(', ')}` : 'Changed',
    })),
    ...changes.withdrawn.map((f) => ({ ...f, how: f.reason ? `Withdrawn: ${f.reason}` : 'Withdrawn' })),
  ];
  return (
    <div className="stack">
      {rows.length ? (
        <Table
          caption={caption}
          rows={rows}
          rowKey={(row) => `${row.how} ${row.number}`}
          columns={[
            {
              key: 'finding',
              heading: 'Finding',
              cell: (row) => (
                <>
                  {row.number}. <span dir="auto">{row.title}</span>
                </>
              ),
            },
            { key: 'how', heading: 'What became of it', cell: (row) => row.how },
          ]}
        />
      ) : (
        <p>No finding differs.</p>
      )}
      {changes.record.length ? <p>Also changed: {changes.record.join(', ')}.</p> : null}
    </div>
  );
}
