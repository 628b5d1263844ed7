import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDatabase } from '@garboard/db/database';
import { migrate } from '@garboard/db/migrate';
import { syncCatalogue } from '@garboard/db/sync-catalogue';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { openLogger } from '@garboard/platform/logger';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import { Client } from 'pg';
import { loadOffice } from '../support/office.ts';
import type { Bench } from './harness.ts';

/** An office with our server and the floor before it, each in a process of its own. */
export interface Office {
  size: number;
  ours: string;
  floor: string;
  databaseUrl: string;
  /** The firm with half of all surveys. */
  firm: { id: string; surveyor: Signed; office: Signed };
  insurer: Signed;
  owner: Signed;
  close(): Promise<void>;
}

const firmCount = 20;

/** Starts a program that says the port on which it listens; it ends when we do. */
async function listening(
  file: string,
  env: Record<string, string>,
): Promise<{ url: string; child: ChildProcess }> {
  const child = fork(join(import.meta.dirname, file), {
    env: { ...process.env, NODE_ENV: 'production', ...env },
    // As `npm start` runs our processes; what they log goes to /dev/null.
    execArgv: ['--max-semi-space-size=64', '--import', 'tsx'],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  const port = await Promise.race([
    once(child, 'message').then(([said]) => Number(said)),
    once(child, 'exit').then(() => Promise.reject(new Error(`${file} ended before it listened.`))),
  ]);
  return { url: `http://127.0.0.1:${port}`, child };
}

async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const exit = once(child, 'exit');
  child.disconnect();
  await exit;
}

/** Makes an office of so many surveys in a PostgreSQL of its own, with the server's own settings. */
export async function openOffice(bench: Bench, size: number): Promise<Office> {
  const log = openLogger('bench', 'fatal');
  const dataDir = await mkdtemp(join(tmpdir(), 'garboard-bench-'));
  const postgres = await startEmbeddedPostgres({ dataDir, log, throwaway: true });
  await migrate({ url: postgres.url });
  await syncCatalogue({ url: postgres.url, entries: catalogue });
  const db = openDatabase(postgres.url, 3);
  const heavy = await buildFirm(db, ['office', 'surveyor']);
  const firms = [{ id: heavy.id, surveyor: heavy.surveyor.id }];
  while (firms.length < firmCount) {
    const firm = await buildFirm(db, ['surveyor']);
    firms.push({ id: firm.id, surveyor: firm.surveyor.id });
  }
  const [insurer, owner] = [await buildPerson(db), await buildPerson(db)];
  await db.close();
  const begun = performance.now();
  await loadOffice(postgres.url, { surveys: size }, { firms, insurer: insurer.id, owner: owner.id });
  const seconds = (performance.now() - begun) / 1000;
  bench.note(`load${size}Seconds`, Math.round(seconds));
  bench.say(`${size} surveys loaded in ${seconds.toFixed(1)} s`);
  bench.note('postgres', await versionOf(postgres.url));
  const ours = await listening('ours.ts', { OURS_DATABASE_URL: postgres.url, OURS_DATA_DIR: dataDir });
  const floor = await listening('floor.ts', { FLOOR_DATABASE_URL: postgres.url });
  return {
    size,
    ours: ours.url,
    floor: floor.url,
    databaseUrl: postgres.url,
    firm: heavy,
    insurer,
    owner,
    async close() {
      await Promise.all([ended(ours.child), ended(floor.child)]);
      await postgres.stop();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}

async function versionOf(url: string): Promise<string> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query<{ server_version: string }>('SHOW server_version');
    return rows[0]?.server_version ?? 'unknown';
  } finally {
    await client.end();
  }
}

/** Runs work on offices of these sizes, all of them open at once, so that rounds can go from one to the next. */
export async function withOffices(
  bench: Bench,
  work: (offices: readonly Office[]) => Promise<void>,
): Promise<void> {
  const offices: Office[] = [];
  try {
    for (const size of bench.sizes) offices.push(await openOffice(bench, size));
    await work(offices);
  } finally {
    for (const office of offices) await office.close();
  }
}
