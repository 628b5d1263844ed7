import { recordEvents } from '@garboard/core/events/record-event';
import { verifyRecord } from '@garboard/core/record/verify-record';
import { type Database, inTransaction, openDatabase } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { Client } from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type FreshDatabase, freshDatabase } from '../support/database.ts';
import { contextFor } from './events.ts';

let database: FreshDatabase;
let db: Database;
let owner: Client;

beforeAll(async () => {
  database = await freshDatabase();
  db = openDatabase(database.url, 12);
  owner = new Client({ connectionString: database.url });
  await owner.connect();
});

afterAll(async () => {
  await owner?.end();
  await db?.close();
  await database?.drop();
});

async function newFirm(): Promise<string> {
  const id = newId();
  await owner.query(`INSERT INTO firms (id, name) VALUES ($1, 'Teal Hollow')`, [id]);
  return id;
}

const write = (firmIds: string[], events: { firmId: string; title: string }[]) =>
  inTransaction(db, firmIds, (tx) =>
    recordEvents(
      contextFor(tx, firmIds),
      events.map(({ firmId, title }) => ({
        firmId,
        surveyId: newId(),
        findingId: newId(),
        kind: 'finding.created' as const,
        role: 'surveyor',
        data: { title },
      })),
    ),
  );

const check = (firmId: string) => verifyRecord((work) => inTransaction(db, [firmId], work), firmId);
const titles = (count: number, firmId: string) =>
  Array.from({ length: count }, (_, i) => ({ firmId, title: `Chafed hose ${i + 1} “naïve” \n 水` }));

/** A firm with eight entries in its record, whole; answers what an intruder with the owner's rights starts from. */
async function eight() {
  const firmId = await newFirm();
  const ids = [
    ...(await write([firmId], titles(1, firmId))),
    ...(await write([firmId], titles(3, firmId))),
    ...(await write([firmId], titles(4, firmId))),
  ];
  expect(await check(firmId)).toMatchObject({ entries: 8, broken: null });
  return { firmId, ids };
}

test('entries are numbered in the order of writing, across transactions', async () => {
  const { firmId, ids } = await eight();
  const { rows } = await owner.query('SELECT event_id FROM event_links WHERE firm_id = $1 ORDER BY seq', [
    firmId,
  ]);
  expect(rows.map((row) => row.event_id)).toEqual(ids);
});

test('a transaction that fails leaves no entry and no gap', async () => {
  const { firmId } = await eight();
  await expect(
    inTransaction(db, [firmId], async (tx) => {
      await recordEvents(contextFor(tx, [firmId]), [{ firmId, kind: 'survey.edited', role: 'office' }]);
      throw new Error('thought better of it');
    }),
  ).rejects.toThrow('thought better');
  await write([firmId], titles(1, firmId));
  expect(await check(firmId)).toMatchObject({ entries: 9, broken: null });
});

test('the application can add and read, not change, delete or link', async () => {
  const { firmId, ids } = await eight();
  const attempt = (sql: string) =>
    inTransaction(db, [firmId], (tx) => tx.$executeRawUnsafe(sql)).then(
      () => 'done',
      (error: Error) => (/permission denied/.test(error.message) ? 'refused' : error.message),
    );
  const zero = `'\\x00'`;
  const attempts = [
    `UPDATE events SET kind = 'x' WHERE id = '${ids[0]}'`,
    `UPDATE events SET actor_name = 'x' WHERE id = '${ids[0]}'`,
    `DELETE FROM events WHERE id = '${ids[0]}'`,
    'TRUNCATE events',
    'UPDATE event_links SET seq = seq + 1',
    'DELETE FROM event_links',
    `INSERT INTO event_links VALUES ('${firmId}', 99, '${newId()}', ${zero}, ${zero}, ${zero})`,
    'UPDATE event_heads SET seq = 0',
    'DELETE FROM event_heads',
    `INSERT INTO event_heads VALUES ('${newId()}', 0, ${zero}, ${zero})`,
    'ALTER TABLE events DISABLE TRIGGER ALL',
    'DROP TRIGGER chain_event ON events',
    `SELECT garboard_lock_heads(ARRAY['${firmId}']::uuid[])`,
    'SELECT garboard_link_event(e) FROM events e',
  ];
  const answers = await Promise.all(attempts.map(attempt));
  const owned = /must be owner|permission denied/;
  expect(answers.filter((answer) => answer !== 'refused' && !owned.test(answer))).toEqual([]);
  expect(await check(firmId)).toMatchObject({ entries: 8, broken: null });
});

test.each([
  ['kind', `UPDATE events SET kind = 'finding.deleted' WHERE id = $1`],
  ['time', `UPDATE events SET at = at + interval '1 ms' WHERE id = $1`],
  ['who', 'UPDATE events SET actor_id = gen_random_uuid() WHERE id = $1'],
  ['role', `UPDATE events SET actor_role = 'insurer' WHERE id = $1`],
  ['survey', 'UPDATE events SET survey_id = gen_random_uuid() WHERE id = $1'],
  ['finding', 'UPDATE events SET finding_id = NULL WHERE id = $1'],
  ['report', 'UPDATE events SET report_id = gen_random_uuid() WHERE id = $1'],
  ['firm', 'UPDATE events SET firm_id = gen_random_uuid() WHERE id = $1'],
  ['name', `UPDATE events SET actor_name = 'Nobody' WHERE id = $1`],
  ['particulars', `UPDATE events SET data = '{"title":"Sound hose"}' WHERE id = $1`],
  ['salt', `UPDATE events SET salt = '\\x00' WHERE id = $1`],
  [
    'particulars away',
    `UPDATE events SET salt = NULL, erased_by = gen_random_uuid(), data = '{}' WHERE id = $1`,
  ],
  ['event deleted', 'DELETE FROM events WHERE id = $1'],
  ['link deleted', 'DELETE FROM event_links WHERE event_id = $1'],
  [
    'both deleted',
    'WITH gone AS (DELETE FROM event_links WHERE event_id = $1) DELETE FROM events WHERE id = $1',
  ],
  ['link pointed elsewhere', 'UPDATE event_links SET event_id = gen_random_uuid() WHERE event_id = $1'],
  ['hash', `UPDATE event_links SET hash = '\\x00' WHERE event_id = $1`],
])('changed afterwards: %s. Found at entry 4', async (_what, sql) => {
  const { firmId, ids } = await eight();
  await owner.query(sql, [ids[3]]);
  expect(await check(firmId)).toMatchObject({ entries: 3, broken: { seq: 4 } });
});

test('the last entry changed or taken away is found too', async () => {
  const changed = await eight();
  await owner.query(`UPDATE events SET kind = 'survey.edited' WHERE id = $1`, [changed.ids[7]]);
  expect(await check(changed.firmId)).toMatchObject({ broken: { seq: 8 } });
  const cut = await eight();
  await owner.query('DELETE FROM event_links WHERE firm_id = $1 AND seq > 6', [cut.firmId]);
  await owner.query('DELETE FROM events WHERE id = ANY ($1)', [cut.ids.slice(6)]);
  const { broken } = await check(cut.firmId);
  expect(broken).toMatchObject({ seq: 7, problem: expect.stringContaining('the record had 8 entries') });
});

test('two entries that changed places are found at the first', async () => {
  const { firmId } = await eight();
  for (const [from, to] of [
    [3, 99],
    [5, 3],
    [99, 5],
  ]) {
    await owner.query('UPDATE event_links SET seq = $3 WHERE firm_id = $1 AND seq = $2', [firmId, from, to]);
  }
  expect(await check(firmId)).toMatchObject({ broken: { seq: 3 } });
});

test('one taken out with the others moved up is found where it was', async () => {
  const { firmId, ids } = await eight();
  await owner.query('DELETE FROM event_links WHERE firm_id = $1 AND seq = 4', [firmId]);
  await owner.query('DELETE FROM events WHERE id = $1', [ids[3]]);
  for (const seq of [5, 6, 7, 8]) {
    await owner.query('UPDATE event_links SET seq = seq - 1 WHERE firm_id = $1 AND seq = $2', [firmId, seq]);
  }
  await owner.query('UPDATE event_heads SET seq = 7 WHERE firm_id = $1', [firmId]);
  expect(await check(firmId)).toMatchObject({ broken: { seq: 4 } });
});

const forged = `INSERT INTO events (id, firm_id, kind, actor_name, actor_role, data)
  VALUES ($2, $1, 'evidence.accepted', 'Nobody', 'insurer', '{}')`;

/** Puts an event in and makes its link as the database itself would have, after this entry. */
async function forgeAfter(firmId: string, seq: number) {
  const id = newId();
  await owner.query('BEGIN; SET LOCAL session_replication_role = replica');
  await owner.query(forged, [firmId, id]);
  for (let at = 8; at > seq; at -= 1) {
    await owner.query('UPDATE event_links SET seq = seq + 1 WHERE firm_id = $1 AND seq = $2', [firmId, at]);
  }
  await owner.query(
    `UPDATE event_heads h SET seq = l.seq, hash = l.hash, previous_hash = l.previous_hash
     FROM event_links l WHERE l.firm_id = $1 AND l.seq = $2 AND h.firm_id = $1`,
    [firmId, seq],
  );
  await owner.query('SELECT garboard_link_event(e) FROM events e WHERE id = $1', [id]);
  await owner.query(
    `UPDATE event_heads h SET seq = l.seq, hash = l.hash, previous_hash = l.previous_hash
     FROM event_links l WHERE l.firm_id = $1 AND l.seq = 9 AND h.firm_id = $1`,
    [firmId],
  );
  await owner.query('COMMIT');
}

test('one put in between, with the chain’s own hash, is found at its place', async () => {
  const { firmId } = await eight();
  await forgeAfter(firmId, 4);
  const { broken } = await check(firmId);
  expect(broken).toMatchObject({ seq: 5, problem: expect.stringContaining('put in later') });
});

test('one put in past the triggers is named', async () => {
  const { firmId } = await eight();
  const id = newId();
  await owner.query('BEGIN; SET LOCAL session_replication_role = replica');
  await owner.query(forged, [firmId, id]);
  await owner.query('COMMIT');
  expect(await check(firmId)).toMatchObject({ broken: { seq: null, eventId: id } });
});

test('one rewritten with its own hash is found, though its hash is right', async () => {
  const { firmId, ids } = await eight();
  await owner.query(`UPDATE events SET kind = 'finding.deleted' WHERE id = $1`, [ids[3]]);
  await owner.query('DELETE FROM event_links WHERE event_id = $1', [ids[3]]);
  await owner.query(
    `UPDATE event_heads h SET seq = l.seq, hash = l.hash, previous_hash = l.previous_hash
     FROM event_links l WHERE l.firm_id = $1 AND l.seq = 3 AND h.firm_id = $1`,
    [firmId],
  );
  await owner.query('SELECT garboard_link_event(e) FROM events e WHERE id = $1', [ids[3]]);
  await owner.query(
    `UPDATE event_heads h SET seq = l.seq, hash = l.hash, previous_hash = l.previous_hash
     FROM event_links l WHERE l.firm_id = $1 AND l.seq = 8 AND h.firm_id = $1`,
    [firmId],
  );
  const { broken } = await check(firmId);
  expect(broken).toMatchObject({ seq: 4, problem: expect.stringContaining('rewritten') });
});

test('eight writers with locks in mixed order never deadlock, and every chain is whole', async () => {
  const firms = await Promise.all(Array.from({ length: 4 }, newFirm));
  const rounds = 40;
  const vessels = await Promise.all(
    firms.map(async (firmId) => {
      const id = newId();
      await owner.query(
        `INSERT INTO vessels (id, firm_id, name, updated_at) VALUES ($1, $2, 'Pintle', now())`,
        [id, firmId],
      );
      return id;
    }),
  );
  const mixed = <T>(items: T[], turn: number) => [
    ...items.slice(turn % items.length),
    ...items.slice(0, turn % items.length),
  ];
  await Promise.all(
    Array.from({ length: 8 }, async (_, writer) => {
      for (let round = 0; round < rounds; round += 1) {
        // Each goes through the firms from another one on, every other one backwards.
        const turned = mixed(firms, writer + round);
        const order = writer % 2 ? turned.reverse() : turned;
        await inTransaction(db, firms, async (tx) => {
          const ctx = contextFor(tx, firms);
          for (const firmId of order.slice(0, 3)) {
            await recordEvents(ctx, [{ firmId, kind: 'survey.edited', role: 'office' }]);
          }
          // A lock of its own, taken after the events were written: in one order, as use cases do.
          const vessel = vessels[(writer + round) % 4];
          await tx.$executeRaw`UPDATE vessels SET version = version + 1 WHERE id = ${vessel}::uuid`;
        });
      }
    }),
  );
  const checked = await Promise.all(firms.map(check));
  expect(checked.map((c) => c.broken)).toEqual([null, null, null, null]);
  expect(checked.reduce((sum, c) => sum + c.entries, 0)).toBe(8 * rounds * 3);
  const { rows } = await owner.query(
    `SELECT deadlocks FROM pg_stat_database WHERE datname = current_database()`,
  );
  expect(Number(rows[0].deadlocks)).toBe(0);
});
