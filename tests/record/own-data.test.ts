import { recordEvent } from '@garboard/core/events/record-event';
import { bareNames, named, owned } from '@garboard/core/own-data/personal-columns';
import { fileColumns, otherHashes } from '@garboard/core/record/file-columns';
import { verifyRecord } from '@garboard/core/record/verify-record';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { Client } from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { contextFor } from './events.ts';

let server: TestServer;
let owner: Client;
beforeAll(async () => {
  server = await startServer();
  owner = new Client({ connectionString: server.databaseUrl });
  await owner.connect();
});
afterAll(async () => {
  await owner?.end();
  await server?.close();
});

/** An insurer who was invited, sent evidence and decided something, under names only they have. */
async function insurerAtWork() {
  const firm = await buildFirm(server.db, ['principal', 'office']);
  const name = `Wren “Dee” Ashlock\\Moor ${newId().slice(-4)}`;
  const person = await buildPerson(server.db, { name });
  const surveyId = newId();
  await inTransaction(server.db, [firm.id], async (tx) => {
    const ids = { firmId: firm.id, surveyId };
    const vesselId = newId();
    await tx.vessel.create({ data: { id: vesselId, firmId: firm.id, name: 'Pintle' } });
    await tx.survey.create({
      data: { id: surveyId, firmId: firm.id, vesselId, number: '2026-0001', purpose: 'condition' },
    });
    await tx.party.create({
      data: { id: newId(), ...ids, personId: person.id, role: 'insurer', name, released: true },
    });
    const findingId = newId();
    const ctx = contextFor(tx, [firm.id]);
    await recordEvent(ctx, { ...ids, kind: 'party.added', role: 'office', data: { name, role: 'insurer' } });
    await recordEvent(ctx, {
      ...{ ...ids, findingId, kind: 'evidence.accepted', role: 'insurer', data: { reason: `Seen, ${name}` } },
      behalf: { id: person.id, name },
    });
    await recordEvent(ctx, { ...ids, kind: 'survey.edited', role: 'office', data: { note: 'Wrenching' } });
  });
  return { firm, person, surveyId, name };
}

const check = (firmId: string) => verifyRecord((work) => inTransaction(server.db, [firmId], work), firmId);

test('a person’s export holds what is theirs and what they did, and no secret', async () => {
  const { person, surveyId } = await insurerAtWork();
  const { body } = await server.as(person).get('/v1/me/export').expect(200);
  const tables = body.sections.map((s: { table: string }) => s.table);
  expect(tables).toEqual(expect.arrayContaining(['sessions', 'parties', 'events']));
  expect(body.person).toMatchObject({ id: person.id, email: person.email });
  expect(JSON.stringify(body)).toContain(surveyId);
  expect(JSON.stringify(body)).not.toMatch(/"[a-z_]*(hash|secret|token|salt)[a-z_]*":/);
});

test('an erasure leaves no name anywhere, and the chain whole', async () => {
  const { firm, person, name } = await insurerAtWork();
  const me = server.as(person);
  await me.post('/v1/me/erasure').send({ email: 'other@builders.example' }).expect(422);
  await me.post('/v1/me/erasure').send({ email: person.email }).expect(204);
  await me.get('/v1/me').expect(401);
  const { rows: tables } = await owner.query(
    `SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations'`,
  );
  const escaped = JSON.stringify(name).slice(1, -1);
  for (const { tablename } of tables) {
    const { rowCount } = await owner.query(
      `SELECT FROM "${tablename}" AS t WHERE strpos(to_jsonb(t)::text, $1) > 0 OR strpos(to_jsonb(t)::text, $2) > 0`,
      [escaped, person.email],
    );
    expect([tablename, rowCount]).toEqual([tablename, 0]);
  }
  const { rows } = await owner.query(
    'SELECT kind, actor_name, data FROM events WHERE firm_id = $1 ORDER BY id',
    [firm.id],
  );
  expect(rows.map((r) => r.kind)).toEqual([
    'party.added',
    'evidence.accepted',
    'survey.edited',
    'person.erased',
  ]);
  expect(rows[0].data).toEqual({ name: 'Erased person', role: 'insurer' });
  expect(rows[1]).toMatchObject({ actor_name: 'Erased person', data: { reason: 'Seen, Erased person' } });
  expect(rows[2].data).toEqual({ note: 'Wrenching' });
  expect(await check(firm.id)).toMatchObject({ entries: 4, broken: null });
  await owner.query(
    `UPDATE events SET kind = 'evidence.returned' WHERE firm_id = $1 AND kind = 'evidence.accepted'`,
    [firm.id],
  );
  expect(await check(firm.id)).toMatchObject({ broken: { seq: 2 } });
});

test('the last principal stays until there is another; an erasure once recorded erases nothing more', async () => {
  const firm = await buildFirm(server.db, ['principal', 'office']);
  const refused = await server
    .as(firm.principal)
    .post('/v1/me/erasure')
    .send({ email: firm.principal.email })
    .expect(409);
  expect(refused.body.detail).toContain('Make a colleague principal first');
  await owner.query(`UPDATE firm_members SET role = 'principal' WHERE person_id = $1`, [firm.office.id]);
  await server.as(firm.principal).post('/v1/me/erasure').send({ email: firm.principal.email }).expect(204);
  const { rows } = await owner.query(`SELECT id FROM events WHERE firm_id = $1 AND kind = 'person.erased'`, [
    firm.id,
  ]);
  await expect(
    inTransaction(
      server.db,
      [firm.id],
      (tx) => tx.$executeRaw`SELECT garboard_erase_from_record(${rows[0].id}::uuid, ${['Office']}, 'x')`,
    ),
  ).rejects.toThrow('no erasure under way');
  expect(await check(firm.id)).toMatchObject({ broken: null });
});

test('every column that names a person is known to export and erasure', async () => {
  const { rows } = await owner.query(`
    SELECT table_name || '.' || column_name AS at FROM information_schema.columns
    JOIN pg_tables ON tablename = table_name AND schemaname = table_schema
    WHERE table_schema = 'public' AND (
      data_type = 'uuid' AND column_name ~ '(^|_)(person|actor|by|reviewer|surveyor)_id$'
      OR data_type = 'text' AND column_name ~ '(_by|by_name|er_name)$')`);
  const known = new Set([
    ...owned.map(([table, column]) => `${table}.${column}`),
    ...named.flatMap(([table, column, name]) => [`${table}.${column}`, `${table}.${name}`]),
    ...bareNames.map(([table, column]) => `${table}.${column}`),
    // Words of the survey: who asked for it, who does the work, who decides, who signed; who agreed to a quotation.
    ...[
      'surveys.requested_by',
      'surveys.clearance_decided_by',
      'clearances.work_done_by',
      'reports.signed_by',
    ],
    'quotations.decided_by',
  ]);
  expect(rows.map((r) => r.at).filter((at) => !known.has(at))).toEqual([]);
});

test('every column with a hash is known to be a file’s or something else’s', async () => {
  const { rows } = await owner.query(`
    SELECT table_name || '.' || column_name AS at FROM information_schema.columns
    JOIN pg_tables ON tablename = table_name AND schemaname = table_schema
    WHERE table_schema = 'public' AND table_name NOT LIKE 'bullmq%' AND column_name ~ '(hash|sha256)$'`);
  const known = new Set([...fileColumns.map(([t, c]) => `${t}.${c}`), ...Object.keys(otherHashes)]);
  expect(rows.map((r) => r.at).filter((at) => !known.has(at))).toEqual([]);
});
