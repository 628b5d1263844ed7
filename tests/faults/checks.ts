import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { setTimeout as sleep } from 'node:timers/promises';
import { sweepOrphans } from '@garboard/core/files/sweep-orphans';
import { fileColumns } from '@garboard/core/record/file-columns';
import { verifyFiles } from '@garboard/core/record/verify-files';
import { verifyRecord } from '@garboard/core/record/verify-record';
import { inTransaction, openDatabase } from '@garboard/db/database';
import { recordFirmIds } from '@garboard/db/special-reads';
import { type ObjectStore, openObjectStore } from '@garboard/platform/object-store';
import { Client } from 'pg';
import type { Acknowledged, Kind, Ledger } from './ledger.ts';
import type { Installation } from './processes.ts';
import type { Receiver } from './receiver.ts';

/** Looks past every fault at what the service really holds, and compares it with the ledger. */
export interface Checks {
  /** Everything acknowledged since the last look is there, once, with the right bytes. @returns how many were looked at */
  acknowledged(): Promise<number>;
  /**
   * Waits, the load being paused, until nothing is left to be done, and looks at all of it: one report, number, PDF and
   * message for each issue, the record unbroken, every file named and every name with its file.
   * @param graceMs how old a file may be that no row names
   */
  atRest(graceMs: number): Promise<void>;
  /** Waits until a queue holds jobs that aren’t done, ten seconds at most. */
  untilJobsUnderWay(): Promise<void>;
}

interface Looking {
  installation: Installation;
  ledger: Ledger;
  store: ObjectStore;
  receiver: Receiver;
  ask<Row>(text: string, values?: unknown[]): Promise<Row[]>;
}

export async function openChecks(
  installation: Installation,
  ledger: Ledger,
  receiver: Receiver,
): Promise<Checks> {
  const store = await openObjectStore(installation.storeUrl, join(installation.dir, 'checks'));
  const looking: Looking = {
    ...{ installation, ledger, store, receiver },
    ask: (text, values) => asOwner(installation.databaseUrl(), (client) => client.query(text, values)),
  };
  const places: Partial<Record<Kind, number>> = {};
  const fresh = <K extends Kind>(kind: K): readonly Acknowledged[K][] => {
    const list = ledger.since(kind, places[kind]);
    places[kind] = (places[kind] ?? 0) + list.length;
    return list;
  };
  return {
    acknowledged: () => checkRows(looking, fresh),
    async atRest(graceMs) {
      await untilIdle(looking);
      await checkOnce(looking);
      await checkIssues(looking);
      await checkMails(looking);
      await checkFiles(looking, graceMs);
      await checkRecord(looking);
    },
    async untilJobsUnderWay() {
      const underWay = 'SELECT id FROM outbox WHERE dispatched_at IS NOT NULL AND done_at IS NULL LIMIT 1';
      for (let tries = 0; tries < 200 && (await looking.ask(underWay)).length === 0; tries += 1)
        await sleep(50);
    },
  };
}

async function asOwner<Row>(
  url: string,
  work: (client: Client) => Promise<{ rows: unknown[] }>,
): Promise<Row[]> {
  const client = new Client({ connectionString: url });
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await work(client)).rows as Row[];
  } finally {
    await client.end();
  }
}

/** Names those of these that aren’t there. */
async function missingFrom<T>(
  { ask, ledger }: Looking,
  what: string,
  list: readonly T[],
  query: { text: string; values: (entry: T) => unknown[]; types: string[] },
): Promise<number> {
  if (list.length === 0) return 0;
  const columns = query.types.map((_, at) => list.map((entry) => query.values(entry)[at]));
  const given = query.types.map((type, at) => `$${at + 1}::${type}[]`).join(', ');
  const names = query.types.map((_, at) => `v${at + 1}`).join(', ');
  const lost = await ask<{ v1: string }>(
    `SELECT v1 FROM unnest(${given}) AS given (${names}) WHERE NOT EXISTS (${query.text})`,
    columns,
  );
  for (const { v1 } of lost) ledger.violation(`Lost: ${what} ${v1} was acknowledged and isn’t there.`);
  return list.length;
}

async function checkRows(
  looking: Looking,
  fresh: <K extends Kind>(kind: K) => readonly Acknowledged[K][],
): Promise<number> {
  const photos = fresh('photo');
  const evidence = fresh('evidence');
  const issued = fresh('issued');
  const answered = (kind: string) =>
    `SELECT FROM idempotency_keys k WHERE k.key = v2 AND k.answer->>'id' = v1::text AND EXISTS (SELECT FROM ${kind} r WHERE r.id = v1)`;
  const byKey = <T extends { id: string; key: string }>(what: string, table: string, list: readonly T[]) =>
    missingFrom(looking, what, list, {
      text: answered(table),
      values: (entry) => [entry.id, entry.key],
      types: ['uuid', 'text'],
    });
  const counts = [
    await missingFrom(looking, 'a sign-in', fresh('session'), {
      text: 'SELECT FROM sessions s WHERE s.token_hash = v1 AND s.person_id = v2',
      values: (entry) => [entry.tokenHash, entry.personId],
      types: ['text', 'uuid'],
    }),
    await byKey('survey', 'surveys', fresh('survey')),
    await byKey('finding', 'findings', fresh('finding')),
    await byKey('report', 'reports', fresh('report')),
    await byKey('evidence', 'clearances', evidence),
    await missingFrom(looking, 'photo', photos, {
      text: 'SELECT FROM photos p WHERE p.id = v1 AND p.sha256 = v2',
      values: (entry) => [entry.id, entry.sha256],
      types: ['uuid', 'text'],
    }),
    await missingFrom(looking, 'issued report', issued, {
      text: `SELECT FROM reports r WHERE r.id = v1 AND r.sha256 = v2 AND r.state = 'issued' AND r.revision = v3`,
      values: (entry) => [entry.id, entry.sha256, entry.revision],
      types: ['uuid', 'text', 'int'],
    }),
    await missingFrom(looking, 'decision on', fresh('decision'), {
      text: 'SELECT FROM clearances c WHERE c.id = v1 AND c.decided_at IS NOT NULL',
      values: (entry) => [entry.id],
      types: ['uuid'],
    }),
  ];
  for (const sha256 of [
    ...photos.map((photo) => photo.sha256),
    ...evidence.flatMap((entry) => entry.files),
    ...issued.map((report) => report.sha256),
  ])
    await checkObject(looking, sha256);
  return counts.reduce((sum, count) => sum + count, 0);
}

async function checkObject({ store, ledger }: Looking, sha256: string): Promise<void> {
  try {
    const hash = createHash('sha256');
    await pipeline((await store.read(sha256)).stream, hash);
    if (hash.digest('hex') !== sha256)
      ledger.violation(`File ${sha256} has other bytes than were acknowledged.`);
  } catch (error) {
    ledger.violation(`File ${sha256} was acknowledged and can’t be read: ${String(error)}`);
  }
}

/** Waits until no job, report, photo or message is left to be worked at; two minutes and a half at most. */
async function untilIdle({ ask, ledger, installation }: Looking): Promise<void> {
  const standing = `
    SELECT (SELECT count(*) FROM outbox WHERE done_at IS NULL)::int AS jobs,
      (SELECT count(*) FROM reports WHERE state IN ('queued', 'rendering'))::int AS reports,
      (SELECT count(*) FROM photos WHERE state = 'processing')::int AS photos,
      (SELECT count(*) FROM webhook_deliveries WHERE state IN ('waiting', 'sending'))::int AS messages`;
  const deadline = Date.now() + idleMs;
  for (;;) {
    await installation.untilReady();
    const [now] = await ask<Record<string, number>>(standing);
    if (now && Object.values(now).every((count) => count === 0)) return;
    if (Date.now() > deadline) {
      ledger.violation(`Work is still undone after ${idleMs / 1000} s of rest: ${JSON.stringify(now)}`);
      return;
    }
    await sleep(250);
  }
}

/** What was lost altogether is asked for again after three minutes; see requeue-lost.ts. */
const idleMs = 280_000;

async function checkOnce({ ask, ledger }: Looking): Promise<void> {
  const twice = async (what: string, query: string) => {
    for (const row of await ask<Record<string, unknown>>(query))
      ledger.violation(`Twice: ${what} ${JSON.stringify(row)}`);
  };
  await twice(
    'a finding',
    'SELECT title, count(*) FROM findings GROUP BY survey_id, title HAVING count(*) > 1',
  );
  await twice(
    'a number',
    'SELECT survey_id, number, count(*) FROM findings GROUP BY survey_id, number HAVING count(*) > 1',
  );
  await twice(
    'a photo',
    'SELECT sha256, count(*) FROM photos GROUP BY survey_id, sha256 HAVING count(*) > 1',
  );
  await twice(
    'a survey number',
    'SELECT number, count(*) FROM surveys GROUP BY firm_id, number HAVING count(*) > 1',
  );
  await twice(
    'a session',
    'SELECT token_hash, count(*) FROM sessions GROUP BY token_hash HAVING count(*) > 1',
  );
  await twice(
    'evidence',
    'SELECT finding_id, count(*) FROM clearances GROUP BY finding_id HAVING count(*) > 1',
  );
  await twice(
    'a party',
    'SELECT survey_id, role, count(*) FROM parties GROUP BY survey_id, role HAVING count(*) > 1',
  );
  await twice(
    'a key',
    'SELECT person_id, key, count(*) FROM idempotency_keys GROUP BY person_id, key HAVING count(*) > 1',
  );
  await twice(
    'an event',
    `SELECT kind, coalesce(finding_id, report_id) AS of, count(*) FROM events
     WHERE kind IN ('report.issued', 'report.requested', 'finding.issued', 'finding.added', 'evidence.sent', 'evidence.accepted')
       AND coalesce(finding_id, report_id) IS NOT NULL
     GROUP BY kind, coalesce(finding_id, report_id) HAVING count(*) > 1`,
  );
}

/** One document, number, file and message for each survey of which a report was asked for. */
async function checkIssues({ ask, ledger, receiver }: Looking): Promise<void> {
  const rows = await ask<{
    survey_id: string;
    id: string;
    state: string;
    revision: number;
    sha256: string | null;
  }>('SELECT survey_id, id, state, revision, sha256 FROM reports ORDER BY survey_id, created_at');
  const perSurvey = new Map<string, number>();
  for (const { survey_id: surveyId, id, state, revision } of rows) {
    perSurvey.set(surveyId, (perSurvey.get(surveyId) ?? 0) + 1);
    if (state === 'failed') continue;
    if (state !== 'issued' || revision !== 1)
      ledger.violation(`Report ${id} is ${state}, revision ${revision}, where one issue was asked for.`);
    const told = receiver.told.get(id)?.size ?? 0;
    if (told !== 1) ledger.violation(`Of the issue of report ${id} ${told} messages were told, not one.`);
  }
  for (const [surveyId, count] of perSurvey)
    if (count > 1) ledger.violation(`Twice: survey ${surveyId} has ${count} reports, one was asked for.`);
}

/** A message may come twice under one id, which mail servers drop; under two ids nobody is told twice. */
async function checkMails({ installation, ledger, ask }: Looking): Promise<void> {
  const folder = join(installation.dir, 'mail');
  const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.eml'));
  const perPerson = new Map<string, Set<string>>();
  for (const name of names) {
    const text = await readFile(join(folder, name), 'utf8');
    const to = /^To: (buyer-\S+)/m.exec(text)?.[1];
    const id = /^Message-ID: (\S+)/im.exec(text)?.[1];
    if (!to || !id) continue;
    perPerson.set(to, (perPerson.get(to) ?? new Set()).add(id));
  }
  const waiting = await ask<{ email: string }>(
    `SELECT p.email FROM people p WHERE p.email LIKE 'buyer-%' AND p.created_at < now() - interval '20 seconds'`,
  );
  for (const { email } of waiting) {
    const invitations = perPerson.get(email)?.size ?? 0;
    if (invitations === 0) ledger.violation(`Lost: ${email} was never mailed an invitation.`);
  }
}

/** Removes what a killed process left behind, as the worker does once a day, with this age in place of a day. */
async function sweepFiles({ installation, store }: Looking, olderThanMs: number): Promise<void> {
  const db = openDatabase(installation.databaseUrl(), 2);
  try {
    await sweepOrphans((work) => inTransaction(db, [], work), { store, olderThanMs, now: new Date() });
  } finally {
    await db.close();
  }
}

async function checkFiles(looking: Looking, graceMs: number): Promise<void> {
  const { installation, ledger, store, ask } = looking;
  const before = Date.now() - graceMs;
  await sweepFiles(looking, graceMs);
  const named = new Set<string>();
  for (const [table, column] of fileColumns) {
    const rows = await ask<{ sha256: string }>(
      `SELECT DISTINCT "${column}" AS sha256 FROM "${table}" WHERE "${column}" IS NOT NULL`,
    );
    for (const { sha256 } of rows) named.add(sha256);
  }
  let orphans = 0;
  for await (const { sha256, keptAt } of store.objects())
    if (!named.has(sha256) && keptAt.getTime() < before) orphans += 1;
  if (orphans > 0) ledger.violation(`${orphans} files that no row names are older than ${graceMs / 1000} s.`);
  const db = openDatabase(installation.databaseUrl(), 2);
  try {
    const firms = await recordFirmIds(db);
    const { broken } = await verifyFiles((work) => inTransaction(db, firms, work), store);
    if (broken) ledger.violation(`File ${broken.sha256}, named by ${broken.namedBy}. ${broken.problem}`);
  } finally {
    await db.close();
  }
}

/** What `npm run verify-log` looks at. */
async function checkRecord({ installation, ledger }: Looking): Promise<void> {
  const db = openDatabase(installation.databaseUrl(), 2);
  try {
    for (const firmId of await recordFirmIds(db)) {
      const { broken } = await verifyRecord((work) => inTransaction(db, [firmId], work), firmId);
      if (broken)
        ledger.violation(`The record of firm ${firmId} is broken at ${broken.seq}: ${broken.problem}`);
    }
  } finally {
    await db.close();
  }
}
