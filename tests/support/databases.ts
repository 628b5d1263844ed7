import { Client } from 'pg';

/** The same server and account, another database. */
export function withDatabase(url: string, name: string): string {
  const other = new URL(url);
  other.pathname = `/${name}`;
  return other.href;
}

/** Runs one statement in a session of its own. */
export async function onServer(url: string, statement: string): Promise<void> {
  await onServerRows(url, statement);
}

/** The same, for what it answers. */
export async function onServerRows<Row extends object>(url: string, statement: string): Promise<Row[]> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Row>(statement)).rows;
  } finally {
    await client.end();
  }
}
