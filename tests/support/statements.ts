import { Client } from 'pg';
import { vi } from 'vitest';

export interface Statement {
  text: string;
  values: unknown[];
}

/** Every statement that this process sends to PostgreSQL while `work` runs, through whichever client. */
export async function statementsOf(work: () => Promise<unknown>): Promise<Statement[]> {
  const sent: Statement[] = [];
  const spy = vi.spyOn(Client.prototype, 'query');
  try {
    await work();
    type Sent = string | Statement | { statements: Statement[] };
    for (const [query, values] of spy.mock.calls as unknown as [Sent, unknown[]?][]) {
      if (typeof query === 'string') sent.push({ text: query, values: values ?? [] });
      else if ('statements' in query) sent.push(...query.statements);
      else sent.push({ text: query.text, values: query.values ?? values ?? [] });
    }
  } finally {
    spy.mockRestore();
  }
  return sent;
}

interface Plan {
  'Node Type': string;
  'Relation Name'?: string;
  Plans?: Plan[];
}

const tablesReadWhole = (plan: Plan): string[] => [
  ...(plan['Node Type'] === 'Seq Scan' ? [plan['Relation Name'] ?? ''] : []),
  ...(plan.Plans ?? []).flatMap(tablesReadWhole),
];

/**
 * The tables that some statement reads from end to end, by the plans that PostgreSQL makes for them: sent again with
 * EXPLAIN in a transaction under the role and the sight that they had.
 *
 * @param url of the database's owner
 */
export async function readWhole(url: string, statements: readonly Statement[]): Promise<string[]> {
  const client = new Client({ connectionString: url, options: '-c role=garboard_app' });
  await client.connect();
  const found: string[] = [];
  try {
    await client.query('BEGIN');
    for (const { text, values } of statements) {
      if (text.includes('set_config(')) await client.query(text, values);
      else if (/^\s*(SELECT|WITH)/.test(text)) {
        const { rows } = await client.query(`EXPLAIN (FORMAT JSON) ${text}`, values);
        found.push(...tablesReadWhole(rows[0]['QUERY PLAN'][0].Plan));
      }
    }
  } finally {
    await client.end();
  }
  return found;
}
