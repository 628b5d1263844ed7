import { createHash } from 'node:crypto';
import { pipeline } from 'node:stream/promises';
import { setTimeout as sleep } from 'node:timers/promises';
import { sweepOrphans } from '@garboard/core/files/sweep-orphans';
import { accountForFiles } from '@garboard/core/record/account-for-files';
import { type Reads, verifyRecord } from '@garboard/core/record/verify-record';
import { inTransaction } from '@garboard/db/database';
import { recordFirmIds } from '@garboard/db/special-reads';
import { Client } from 'pg';
import type { Installation } from '../support/installation.ts';
import type { Acknowledged } from './clients.ts';

/** What was found when everything had come to rest. */
export interface Accounts {
  /** In words, what is missing, twice or wrong; empty when all is as it has to be. */
  wrong: string[];
  /** Files that killed processes had left behind, removed by the sweep. */
  orphans: number;
  objects: number;
  events: number;
}

/** Asked for anew by the sweep: three minutes after it was lost, and a minute until the next look. */
const restMs = 6 * 60_000;

/** Waits until nothing is left to be done, then looks at every report, photo, notice and file. */
export async function settleAccounts(
  { databaseUrl, db, store }: Pick<Installation, 'databaseUrl' | 'db' | 'store'>,
  done: Acknowledged,
): Promise<Accounts> {
  const owner = new Client({ connectionString: databaseUrl });
  await owner.connect();
  const ask = async <Row>(text: string, values: unknown[] = []): Promise<Row[]> =>
    (await owner.query(text, values)).rows as Row[];
  const wrong: string[] = [];
  try {
    await untilAtRest();
    await eachReportOnce();
    await eachPhotoOnce();
    const { orphans, objects } = await everyFileAccountedFor();
    return { wrong, orphans, objects, events: await recordUnbroken() };
  } finally {
    await owner.end();
  }

  async function untilAtRest(): Promise<void> {
    for (const end = Date.now() + restMs; ; ) {
      const [left] = await ask<Record<string, number>>(`
        SELECT (SELECT count(*) FROM outbox WHERE dispatched_at IS NULL)::int AS jobs,
          (SELECT count(*) FROM reports WHERE state IN ('queued', 'rendering'))::int AS reports,
          (SELECT count(*) FROM photos WHERE state = 'processing')::int AS photos,
          (SELECT count(*) FROM events e WHERE e.kind = 'report.issued'
             AND NOT EXISTS (SELECT FROM notices n WHERE n.event_id = e.id))::int AS untold`);
      if (left && Object.values(left).every((count) => count === 0)) return;
      if (Date.now() > end) {
        wrong.push(`After ${restMs / 60_000} minutes of rest this is left: ${JSON.stringify(left)}`);
        return;
      }
      await sleep(500);
    }
  }

  /** Nothing that this finds may be. */
  async function never(what: string, text: string, values: unknown[] = []): Promise<void> {
    for (const row of await ask<Record<string, unknown>>(text, values))
      wrong.push(`${what}: ${JSON.stringify(row)}`);
  }

  async function eachReportOnce(): Promise<void> {
    const ids = done.reports.map(({ id }) => id);
    await never(
      'An issued report is not there',
      `SELECT id FROM unnest($1::uuid[]) AS given (id) WHERE NOT EXISTS
        (SELECT FROM reports r WHERE r.id = given.id AND r.state = 'issued' AND r.revision = 1 AND r.sha256 IS NOT NULL)`,
      [ids],
    );
    await never('A report that nobody asked for', 'SELECT id FROM reports WHERE NOT id = ANY($1::uuid[])', [
      ids,
    ]);
    await never(
      'A survey with another number of reports than one',
      'SELECT survey_id, count(*) FROM reports GROUP BY survey_id HAVING count(*) <> 1',
    );
    await never(
      'A PDF that two reports share',
      'SELECT sha256, count(*) FROM reports GROUP BY sha256 HAVING count(*) > 1',
    );
    for (const kind of ['report.requested', 'report.issued']) {
      await never(
        `${kind} not once`,
        `SELECT r.id, count(e.id) FROM reports r LEFT JOIN events e ON e.report_id = r.id AND e.kind = $1
          GROUP BY r.id HAVING count(e.id) <> 1`,
        [kind],
      );
    }
    await never(
      'Not told once of a report',
      `SELECT e.report_id, p.person_id, count(n.id) FROM events e
         JOIN parties p ON p.survey_id = e.survey_id
         LEFT JOIN notices n ON n.event_id = e.id AND n.person_id = p.person_id
        WHERE e.kind = 'report.issued' GROUP BY e.report_id, p.person_id HAVING count(n.id) <> 1`,
    );
    await never(
      'A notice in two mails',
      'SELECT event_id, person_id, count(DISTINCT mail_id) FROM notices GROUP BY event_id, person_id HAVING count(DISTINCT mail_id) > 1',
    );
  }

  async function eachPhotoOnce(): Promise<void> {
    const [ids, hashes] = [done.photos.map(({ id }) => id), done.photos.map(({ sha256 }) => sha256)];
    await never(
      'A photo that was acknowledged is not there, or not drawn',
      `SELECT id FROM unnest($1::uuid[], $2::text[]) AS given (id, sha256) WHERE NOT EXISTS
        (SELECT FROM photos p WHERE p.id = given.id AND p.sha256 = given.sha256 AND p.state = 'ready'
          AND p.thumb_hash IS NOT NULL AND p.screen_hash IS NOT NULL)`,
      [ids, hashes],
    );
    await never('A photo that nobody sent', 'SELECT id FROM photos WHERE NOT id = ANY($1::uuid[])', [ids]);
    const pdfs = await ask<{ sha256: string }>(`SELECT sha256 FROM reports WHERE sha256 IS NOT NULL`);
    for (const sha256 of [...hashes, ...pdfs.map((row) => row.sha256)]) {
      const hash = createHash('sha256');
      await store.read(sha256).then(
        ({ stream }) => pipeline(stream, hash),
        () => undefined,
      );
      if (hash.digest('hex') !== sha256) wrong.push(`File ${sha256} is not what was kept.`);
    }
  }

  async function everyFileAccountedFor(): Promise<{ orphans: number; objects: number }> {
    const firmIds = (await ask<{ id: string }>('SELECT id FROM firms')).map(({ id }) => id);
    const within: Reads = (work) => inTransaction(db, firmIds, work);
    // Their age is left aside: everything is at rest.
    const { removed } = await sweepOrphans(within, { store, olderThanMs: -60_000, now: new Date() });
    const account = await accountForFiles(within, store);
    if (account.missingCount > 0)
      wrong.push(`Files that rows name are gone: ${JSON.stringify(account.missing)}`);
    if (account.unnamed > 0) wrong.push(`${account.unnamed} files are named by no row after the sweep.`);
    return { orphans: removed, objects: account.objects };
  }

  async function recordUnbroken(): Promise<number> {
    let events = 0;
    for (const firmId of await recordFirmIds(db)) {
      const checked = await verifyRecord((work) => inTransaction(db, [firmId], work), firmId);
      if (checked.broken) wrong.push(`The record of firm ${firmId}: ${checked.broken.problem}`);
      events += checked.entries;
    }
    return events;
  }
}
