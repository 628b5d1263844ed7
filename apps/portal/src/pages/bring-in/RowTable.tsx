import type { ImportRow } from '@garboard/contract/imports';
import { systemLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { Checkbox } from '../../ui/Field.tsx';
import { count } from '../../ui/format.ts';
import { Table } from '../../ui/Table.tsx';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';

const needsLook = (row: ImportRow) => row.problems.length > 0 || row.remarks.length > 0;

/** Each row of the sheet, what it becomes, and what is to be said about it. */
export function RowTable({ rows }: { rows: readonly ImportRow[] }) {
  const [only, setOnly] = useState(false);
  const looked = rows.filter(needsLook);
  const shown = only ? looked : rows;
  return (
    <div className="stack">
      {looked.length && looked.length < rows.length ? (
        <Checkbox
          label={`Show only the ${count(looked.length, 'row')} with something to look at`}
          checked={only}
          onChange={setOnly}
        />
      ) : null}
      <Table
        caption={`${count(shown.length, 'row')} of the sheet`}
        rows={shown}
        rowKey={({ line }) => String(line)}
        columns={[
          {
            key: 'title',
            heading: 'Row',
            cell: (row) => (
              <>
                <span dir="auto">{row.title || 'Without a title'}</span>
                <small>
                  Line {row.line}
                  {row.system ? `, ${systemLabels[row.system]}` : ''}
                </small>
              </>
            ),
          },
          {
            key: 'urgency',
            heading: 'Urgency',
            cell: (row) =>
              row.urgency ? <UrgencyGauge urgency={row.urgency} withinDays={row.withinDays} /> : null,
          },
          {
            key: 'photos',
            heading: 'Photos',
            align: 'tight',
            cell: (row) => (row.photos ? count(row.photos, 'photo') : 'None'),
          },
          { key: 'becomes', heading: 'What becomes of it', cell: (row) => <Fate row={row} /> },
        ]}
      />
    </div>
  );
}

function Fate({ row }: { row: ImportRow }) {
  const { finding, problems, remarks } = row;
  return (
    <>
      {finding ? `Is finding ${finding.number} already` : null}
      {problems.length ? <strong className="signal">Can’t come in yet</strong> : null}
      {!finding && !problems.length ? 'Becomes a finding' : null}
      {[...problems, ...remarks].map(({ column, detail }) => (
        <small className="line" key={`${column} ${detail}`}>
          {column ? `${column}: ` : ''}
          {detail}
        </small>
      ))}
    </>
  );
}
