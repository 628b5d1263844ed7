import { migrate } from '@garboard/db/migrate';
import { pendingChanges } from '@garboard/db/pending-changes';
import { readSchema } from '@garboard/db/schema-engine';
import { Client } from 'pg';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type FreshDatabase, freshDatabase } from '../support/database.ts';
import { onServer, withDatabase } from '../support/databases.ts';

let database: FreshDatabase;
let client: Client;

beforeAll(async () => {
  database = await freshDatabase();
  client = new Client({ connectionString: database.url });
  await client.connect();
});

afterAll(async () => {
  await client?.end();
  await database?.drop();
});

test('the migrations agree with the schema', async () => {
  const sql = await pendingChanges(database.url);
  expect(sql.replaceAll(/^--.*$/gm, '').trim()).toBe('');
});

test('a schema that has gone ahead of the migrations is noticed', async () => {
  const schema = await readSchema();
  const files = [...schema.files, { path: 'more.prisma', content: 'model Tender {\n  id Int @id\n}\n' }];
  expect(await pendingChanges(database.url, { files })).toContain('CREATE TABLE "Tender"');
});

test('two processes that migrate at once apply each migration once', async () => {
  const url = withDatabase(database.url, `garboard_twice_${process.pid}`);
  const maintenance = withDatabase(inject('templateUrl'), 'postgres');
  await onServer(maintenance, `CREATE DATABASE garboard_twice_${process.pid}`);
  try {
    const runs = await Promise.all([migrate({ url }), migrate({ url })]);
    expect(runs.flatMap((run) => run.applied)).toContain('20261125000000_first');
    expect(runs.filter((run) => run.applied.length > 0)).toHaveLength(1);
    expect(await migrate({ url })).toEqual({ applied: [] });
  } finally {
    await onServer(maintenance, `DROP DATABASE garboard_twice_${process.pid} WITH (FORCE)`);
  }
});

test('an account without rights is told what to ask for, and goes on once it has it', async () => {
  const name = `garboard_poor_${process.pid}`;
  const maintenance = withDatabase(inject('templateUrl'), 'postgres');
  await onServer(maintenance, `CREATE ROLE ${name} LOGIN PASSWORD 'poor'`);
  await onServer(maintenance, `CREATE DATABASE ${name} OWNER ${name}`);
  const url = new URL(withDatabase(database.url, name));
  url.username = name;
  url.password = 'poor';
  try {
    await expect(migrate({ url: url.href })).rejects.toThrow(`GRANT garboard_app TO ${name}`);
    await onServer(maintenance, `GRANT garboard_app TO ${name}`);
    await expect(migrate({ url: url.href })).rejects.toThrow(`GRANT garboard_person TO ${name}`);
    await onServer(maintenance, `GRANT garboard_person TO ${name}`);
    expect((await migrate({ url: url.href })).applied).toContain('20261130045010_two_levels_of_sight');
  } finally {
    await onServer(maintenance, `DROP DATABASE ${name} WITH (FORCE)`);
    await onServer(maintenance, `DROP ROLE ${name}`);
  }
});

test('every table with a firm has row-level security and a policy', async () => {
  const { rows } = await client.query(`
    SELECT c.relname FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'firm_id'
    WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace`);
  const { rows: bare } = await client.query(`
    SELECT c.relname FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'firm_id'
    WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace
      AND NOT (c.relrowsecurity AND EXISTS (SELECT FROM pg_policy p WHERE p.polrelid = c.oid))`);
  expect(rows.length).toBeGreaterThan(10);
  expect(bare).toEqual([]);
});

const firmA = '0192f000-0000-7000-8000-00000000000a';
const firmB = '0192f000-0000-7000-8000-00000000000b';
const person = '0192f000-0000-7000-8000-0000000000aa';

async function asApplication<T>(firms: string[], work: () => Promise<T>): Promise<T> {
  await client.query('BEGIN; SET LOCAL ROLE garboard_app');
  await client.query(`SELECT set_config('app.firm_ids', $1, true)`, [firms.join(',')]);
  try {
    return await work();
  } finally {
    await client.query('ROLLBACK');
  }
}

test('the application sees and writes the rows of the named firms only', async () => {
  await client.query(`INSERT INTO firms (id, name) VALUES ($1, 'Teal Hollow'), ($2, 'Brindle Quay')`, [
    firmA,
    firmB,
  ]);
  const insertVessel = (firm: string) =>
    client.query(
      `INSERT INTO vessels (id, firm_id, name, updated_at) VALUES (gen_random_uuid(), $1, 'Pintle', now())`,
      [firm],
    );
  await insertVessel(firmA);
  await insertVessel(firmB);
  const count = async (table: string) => (await client.query(`SELECT FROM ${table}`)).rowCount;

  expect(await asApplication([], () => count('vessels'))).toBe(0);
  expect(await asApplication([firmA], () => count('vessels'))).toBe(1);
  expect(await asApplication([firmA, firmB], () => count('firms'))).toBe(2);
  await expect(asApplication([firmA], () => insertVessel(firmB))).rejects.toThrow(/row-level security/);
  const renamed = await asApplication([firmA], () => client.query(`UPDATE firms SET name = 'x'`));
  expect(renamed.rowCount).toBe(1);
  await expect(asApplication([firmA], () => client.query('DELETE FROM events'))).rejects.toThrow(
    /permission denied/,
  );
  await expect(asApplication([], () => client.query('SELECT FROM _prisma_migrations'))).rejects.toThrow(
    /permission denied/,
  );
});

test('a session answers with person, memberships and firms until it expires', async () => {
  await client.query(`INSERT INTO people (id, email, name) VALUES ($1, 'ida@example.test', 'Ida Thole')`, [
    person,
  ]);
  await client.query(
    `INSERT INTO firm_members (id, firm_id, person_id, role) VALUES (gen_random_uuid(), $1, $2, 'office')`,
    [firmA, person],
  );
  await client.query(
    `INSERT INTO sessions (id, person_id, token_hash, expires_at) VALUES
      (gen_random_uuid(), $1, 'live', now() + interval '1 hour'),
      (gen_random_uuid(), $1, 'over', now() - interval '1 second')`,
    [person],
  );
  const ask = (hash: string) =>
    asApplication([], async () => (await client.query('SELECT * FROM garboard_session($1)', [hash])).rows);
  expect(await ask('over')).toEqual([]);
  expect(await ask('live')).toMatchObject([
    { person_id: person, memberships: `${firmA}:office`, part_in: '' },
  ]);
});

test('an object is in use while any firm names it', async () => {
  const inUse = () =>
    asApplication(
      [],
      async () => (await client.query(`SELECT garboard_object_in_use('cafe') AS used`)).rows[0],
    );
  expect(await inUse()).toEqual({ used: false });
  const survey = '0192f000-0000-7000-8000-0000000000bb';
  await client.query(
    `INSERT INTO surveys (id, firm_id, vessel_id, number, purpose, updated_at)
     SELECT $1, firm_id, id, '2026-0001', 'condition', now() FROM vessels WHERE firm_id = $2`,
    [survey, firmB],
  );
  await client.query(
    `INSERT INTO photos (id, firm_id, survey_id, sha256, bytes, media_type, file_name, width, height, order_key,
       print_hash)
     VALUES (gen_random_uuid(), $1, $2, 'beef', 1, 'image/jpeg', 'a.jpg', 1, 1, 'a', 'cafe')`,
    [firmB, survey],
  );
  expect(await inUse()).toEqual({ used: true });
  // Made anew, and still what an issued report shows.
  await client.query(`UPDATE photos SET print_hash = 'f00d' WHERE survey_id = $1`, [survey]);
  expect(await inUse()).toEqual({ used: false });
  const report = '0192f000-0000-7000-8000-0000000000cc';
  await client.query(
    `INSERT INTO reports (id, firm_id, survey_id, kind, revision, snapshot, requested_by)
     VALUES ($1, $2, $3, 'full', 1, '{}', 'x')`,
    [report, firmB, survey],
  );
  for (const column of ['thumb_hash', 'screen_hash', 'print_hash']) {
    await client.query(
      `INSERT INTO report_photos (firm_id, report_id, photo_id, ${column})
       SELECT firm_id, $1, id, 'cafe' FROM photos WHERE survey_id = $2`,
      [report, survey],
    );
    expect(await inUse()).toEqual({ used: true });
    await client.query('DELETE FROM report_photos WHERE report_id = $1', [report]);
  }
});
