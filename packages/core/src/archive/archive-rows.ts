import { columnsOf } from '@garboard/contract/archive';
import { type ArchiveTable, archiveTables } from '@garboard/contract/archive-tables';
import { Prisma, type Tx } from '@garboard/db/database';
import { named, owned } from '../own-data/personal-columns.ts';
import { fileColumns } from '../record/file-columns.ts';
import { keptRows } from './left-out.ts';

/** Rows fetched at once: those that hold whole documents few, so that memory doesn't grow with them. */
const fetchRows: Record<string, number> = { reports: 4, clearances: 50 };
const usualRows = 500;

const quoted = (name: string) => `"${name}"`;

/**
 * Columns of a table that say who somebody is. Those of the record itself aren't among them: they are in its hashes, so
 * they stay as they are, and `former_ids` says who is meant.
 */
export const personColumns = (table: string): string[] => [
  ...new Set([
    ...[...owned, ...named].filter(([of, column]) => of === table && column !== 'actor_id').map(([, c]) => c),
  ]),
];

/** Everybody whom a row of the firm names. */
const peopleOf = (firmId: string): string => {
  const parts = archiveTables
    .filter(({ name }) => name !== 'people' && name !== 'firms')
    .flatMap(({ name }) =>
      [...personColumns(name), ...(name === 'events' ? ['actor_id'] : [])].map(
        (column) => `SELECT ${quoted(column)} FROM ${quoted(name)} WHERE firm_id = '${firmId}'`,
      ),
    );
  return `t.id IN (${parts.join(' UNION ')})`;
};

function conditionOf(table: ArchiveTable, firmId: string): string {
  if (table.name === 'firms') return `t.id = '${firmId}'`;
  if (table.name === 'people') return peopleOf(firmId);
  const kept = keptRows[table.name];
  return `t.firm_id = '${firmId}'${kept ? ` AND ${kept}` : ''}`;
}

/** A table's rows of a firm in the order of its key, as JSON Lines, many lines at a time. */
export async function* rowsOf(
  tx: Tx,
  table: ArchiveTable,
  firmId: string,
): AsyncGenerator<{ text: string; rows: number }> {
  const list = columnsOf(table).map(({ name }) => `t.${quoted(name)}`);
  const order = table.key.map((name) => `t.${quoted(name)}`).join(', ');
  const select = `SELECT row_to_json(r)::text AS line FROM (
    SELECT ${list.join(', ')} FROM ${quoted(table.name)} AS t
    WHERE ${conditionOf(table, checked(firmId))} ORDER BY ${order}) AS r`;
  yield* fetched<{ line: string }, { text: string; rows: number }>(
    tx,
    select,
    fetchRows[table.name] ?? usualRows,
    (rows) => ({
      // A line feed between the tokens of a kept JSON text is only white space; within its strings it is escaped.
      text: rows.map(({ line }) => `${line.replaceAll('\n', ' ')}\n`).join(''),
      rows: rows.length,
    }),
  );
}

/** A file that rows of a firm name: its hash, the first column that names it, and its media type where one is kept. */
export interface NamedFile {
  sha256: string;
  table: string;
  column: string;
  mediaType: string | null;
}

/** Every file that the archived rows name, each once. */
export async function* filesOf(tx: Tx, firmId: string): AsyncGenerator<NamedFile[]> {
  const named = fileColumns.filter(([table]) => archiveTables.some(({ name }) => name === table));
  const parts = named.map(([table, column], rank) => {
    const of = archiveTables.find(({ name }) => name === table) as ArchiveTable;
    const media = column === 'sha256' && / media_type /.test(of.columns) ? 't.media_type' : 'NULL';
    return `SELECT t.${quoted(column)} AS sha256, ${rank} AS rank, '${table}' AS "table", '${column}' AS "column",
      ${media} AS "mediaType" FROM ${quoted(table)} AS t
      WHERE t.${quoted(column)} IS NOT NULL AND ${conditionOf(of, checked(firmId))}`;
  });
  const select = `SELECT sha256, "table", "column", "mediaType"
    FROM (SELECT DISTINCT ON (sha256) * FROM (${parts.join(' UNION ALL ')}) AS all_of ORDER BY sha256, rank) AS f
    ORDER BY rank, sha256`;
  yield* fetched<NamedFile, NamedFile[]>(tx, select, 2_000, (rows) => rows);
}

/** Reads a statement's rows by a cursor, so many at a time. */
async function* fetched<Row, Out>(
  tx: Tx,
  select: string,
  rows: number,
  present: (rows: Row[]) => Out,
): AsyncGenerator<Out> {
  await tx.$executeRaw`SET LOCAL timezone = 'UTC'`;
  await tx.$executeRaw`DECLARE archived NO SCROLL CURSOR FOR ${Prisma.raw(select)}`;
  for (;;) {
    const some = await tx.$queryRaw<Row[]>`FETCH ${Prisma.raw(String(rows))} FROM archived`;
    if (some.length > 0) yield present(some);
    if (some.length < rows) break;
  }
  await tx.$executeRaw`CLOSE archived`;
}

/** Ids are put into statements as text, where a parameter can't be. */
function checked(firmId: string): string {
  if (!/^[0-9a-f-]{36}$/.test(firmId)) throw new Error('This is no id of a firm.');
  return firmId;
}
