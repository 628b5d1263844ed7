import { chmod, readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { keepPostgres } from '@garboard/platform/kept-postgres';
import { Client } from 'pg';
import { expect, onTestFinished, test } from 'vitest';
import { testFolder } from './folders.ts';

const log = { info: () => undefined, warn: () => undefined };

async function start(dataDir: string) {
  const server = await startEmbeddedPostgres({ dataDir, log, throwaway: true });
  onTestFinished(() => server.stop());
  return server;
}

async function query(url: string, sql: string): Promise<Record<string, unknown>[]> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows;
  } finally {
    await client.end();
  }
}

const pidOf = async (dataDir: string) =>
  Number((await readFile(join(dataDir, 'postgres/18/postmaster.pid'), 'utf8')).split('\n')[0]);

test('a server starts, stops, starts again with its data, and survives a crash', {
  timeout: 60_000,
}, async () => {
  const dataDir = await testFolder();
  const first = await start(dataDir);
  const [version] = await query(first.url, 'SHOW server_version_num');
  expect(Number(version?.server_version_num)).toBeGreaterThanOrEqual(180_000);
  const [settings] = await query(
    first.url,
    "SELECT getdatabaseencoding() AS encoding, upper('ä') AS upper, current_setting('listen_addresses') AS listens",
  );
  expect(settings).toEqual({ encoding: 'UTF8', upper: 'Ä', listens: '127.0.0.1' });
  await query(first.url, 'CREATE TABLE kept AS SELECT 42 AS answer');

  const password = await stat(join(dataDir, 'postgres/password'));
  expect(password.mode & 0o777).toBe(0o600);
  await expect(query(first.url.replace(/:[^:@]*@/, ':wrong@'), 'SELECT 1')).rejects.toThrow(
    'authentication failed',
  );

  await first.stop();
  await expect(query(first.url, 'SELECT 1')).rejects.toThrow();

  const second = await start(dataDir);
  expect(await query(second.url, 'SELECT answer FROM kept')).toEqual([{ answer: 42 }]);

  // Killed as by a crash: its postmaster.pid stays, and its number may by then be another program's, here ours.
  const pid = await pidOf(dataDir);
  process.kill(pid, 'SIGKILL');
  await expect.poll(() => query(second.url, 'SELECT 1').catch(() => 'down')).toBe('down');
  const file = join(dataDir, 'postgres/18/postmaster.pid');
  await writeFile(file, (await readFile(file, 'utf8')).replace(String(pid), String(process.pid)));
  const third = await start(dataDir);
  expect(await query(third.url, 'SELECT answer FROM kept')).toEqual([{ answer: 42 }]);
});

test('a server started by another live process is used and left running', { timeout: 60_000 }, async () => {
  const dataDir = await testFolder();
  const owner = await start(dataDir);
  // As another process would have it: the parent of this one is alive for as long as the test.
  await writeFile(join(dataDir, 'postgres/started-by'), String(process.ppid));
  const guest = await start(dataDir);
  expect(guest.url).toBe(owner.url);
  await guest.stop();
  expect(await query(owner.url, 'SELECT 1 AS one')).toEqual([{ one: 1 }]);

  // Its starter has died: whoever comes next takes it over, and stops it.
  await writeFile(join(dataDir, 'postgres/started-by'), '2147483646');
  const heir = await start(dataDir);
  expect(heir.url).toBe(owner.url);
  await heir.stop();
  await expect(query(owner.url, 'SELECT 1')).rejects.toThrow();
});

test('several starts at once in an empty, private folder share one server', { timeout: 60_000 }, async () => {
  const dataDir = await testFolder();
  // As under /root: PostgreSQL's own account may not pass through here.
  await chmod(dataDir, 0o700);
  const servers = await Promise.all([start(dataDir), start(dataDir), start(dataDir)]);
  expect(new Set(servers.map((server) => server.url)).size).toBe(1);
});

test('a server that is killed is there again at the same address, and stays away once it was stopped', {
  timeout: 60_000,
}, async () => {
  const dataDir = await testFolder();
  let ends = 0;
  const kept = await keepPostgres({ dataDir, log, throwaway: true }, () => {
    ends += 1;
  });
  onTestFinished(() => kept.stop());
  await query(kept.url, 'CREATE TABLE kept AS SELECT 42 AS answer');
  await query(kept.url, 'CHECKPOINT');
  const pid = await pidOf(dataDir);
  process.kill(pid, 'SIGKILL');
  const answer = () => query(kept.url, 'SELECT answer FROM kept').catch(() => 'down');
  await expect.poll(() => ends, { timeout: 30_000, interval: 50 }).toBe(1);
  await expect.poll(answer, { timeout: 30_000, interval: 50 }).toEqual([{ answer: 42 }]);
  expect(await pidOf(dataDir)).not.toBe(pid);
  await kept.stop();
  await new Promise((resolve) => setTimeout(resolve, 600));
  expect(await answer()).toBe('down');
  expect(ends).toBe(1);
});
