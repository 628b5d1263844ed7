import { Client } from 'pg';

/** Empties every table of ours but the record of migrations. @param url address of the owner */
export async function emptyAllTables(url: string): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query<{ name: string }>(
      `SELECT quote_ident(tablename) AS name FROM pg_tables
        WHERE schemaname = 'public' AND tablename <> '_prisma_migrations' AND tablename NOT LIKE 'bullmq%'`,
    );
    if (rows.length > 0) await client.query(`TRUNCATE ${rows.map((r) => r.name).join(', ')} CASCADE`);
  } finally {
    await client.end();
  }
}
