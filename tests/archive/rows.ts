import { onServerRows } from '../support/databases.ts';

/** Every table of ours and its columns, as the database has them. */
export async function columnsByTable(url: string): Promise<Map<string, string[]>> {
  const rows = await onServerRows<{ table: string; columns: string[] }>(
    url,
    `SELECT table_name AS table, array_agg(column_name::text ORDER BY ordinal_position) AS columns
       FROM information_schema.columns JOIN information_schema.tables USING (table_schema, table_name)
      WHERE table_schema = 'public' AND table_type = 'BASE TABLE' AND table_name !~ '^(bullmq|_prisma)' GROUP BY 1`,
  );
  return new Map(rows.map(({ table, columns }) => [table, columns]));
}

/** Every row of a table, as JSON texts in their order; those of a firm alone where one is named. */
export async function rowsIn(url: string, table: string, leftOut: readonly string[], where = 'true') {
  const rows = await onServerRows<{ row: string }>(
    url,
    `SELECT (to_jsonb(t) - '{${leftOut.join(',')}}'::text[])::text AS row FROM "${table}" AS t WHERE ${where} ORDER BY 1`,
  );
  return rows.map(({ row }) => row);
}
