import type { ReactNode } from 'react';

export interface Column<Row> {
  key: string;
  heading: string;
  cell: (row: Row) => ReactNode;
  /** Figures stand to the right; `tight` never breaks a line. */
  align?: 'num' | 'tight';
}

/**
 * A table with real headings. The first column heads its row and says what a person would say on the telephone.
 * On a narrow screen each row is set as labels and values.
 */
export function Table<Row>({
  caption,
  columns,
  rows,
  rowKey,
  even = false,
}: {
  caption: ReactNode;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  /** Columns of fixed share, so that several tables under one another line up. */
  even?: boolean;
}) {
  return (
    <table className={even ? 'table table-even' : 'table'}>
      <caption>{caption}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column.key} scope="col" className={column.align}>
              {column.heading}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={rowKey(row)}>
            {columns.map((column, at) =>
              at === 0 ? (
                <th key={column.key} scope="row">
                  {column.cell(row)}
                </th>
              ) : (
                <td key={column.key} data-label={column.heading} className={column.align}>
                  {wrap(column.cell(row))}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** On a narrow screen a cell is a grid of label and value, so the value must be one box, or nothing at all. */
function wrap(content: ReactNode): ReactNode {
  return content === null || content === undefined || content === false || content === '' ? null : (
    <div>{content}</div>
  );
}
