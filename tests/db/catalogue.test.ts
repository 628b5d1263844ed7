import { inTransaction, openDatabase } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { migrate } from '@garboard/db/migrate';
import { type OurEntry, syncCatalogue } from '@garboard/db/sync-catalogue';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
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

const sync = (entries: readonly OurEntry[]) => syncCatalogue({ url: database.url, entries });
const versions = async (): Promise<Record<string, number>> =>
  Object.fromEntries(
    (await client.query('SELECT key, version FROM catalogue_entries')).rows.map((row) => [
      row.key,
      row.version,
    ]),
  );
const [first, second, ...others] = catalogue;
if (!first || !second) throw new Error('The catalogue is empty.');

describe('our entries in the database', () => {
  it('are those of the code, and a second preparation writes nothing', async () => {
    expect(Object.keys(await versions()).sort()).toEqual(catalogue.map((entry) => entry.key).sort());
    expect(await sync(catalogue)).toEqual({ written: 0, removed: 0 });
  });

  it('rise by one version with a change of words, disappear with the code, come back', async () => {
    const changed = { ...first, title: 'Quizzical wording', alsoCalled: ['sea unicorn'] };
    expect(await sync([changed, ...others])).toEqual({ written: 1, removed: 1 });
    const now = await versions();
    expect([now[first.key], now[second.key], now[others[0]?.key ?? '']]).toEqual([2, undefined, 1]);
    const found = await client.query(
      `SELECT key FROM catalogue_entries WHERE search @@ to_tsquery('garboard_english', 'unicorn')`,
    );
    expect(found.rows).toEqual([{ key: first.key }]);
    expect((await client.query(`SELECT FROM catalogue_words WHERE word = 'quizzical'`)).rowCount).toBe(1);
    expect(await sync(catalogue)).toEqual({ written: 2, removed: 0 });
    expect((await versions())[first.key]).toBe(3);
    expect((await client.query(`SELECT FROM catalogue_words WHERE word = 'quizzical'`)).rowCount).toBe(0);
  });

  it('never take a number that a firm’s words have', async () => {
    const db = openDatabase(database.url, 2);
    const firmId = newId();
    await inTransaction(db, [firmId], async (tx) => {
      await tx.firm.create({ data: { id: firmId, name: 'A firm' } });
      await tx.firmCatalogueEntry.create({
        data: {
          ...{ id: newId(), firmId, key: second.key, version: 9, savedAt: new Date(), savedBy: 'x' },
          ...{ system: 'hull', title: 't', urgency: 'note', lookFor: '', observed: '', consequence: '' },
          recommendation: '',
        },
      });
    });
    await db.close();
    await sync([first, { ...second, title: 'Said anew' }, ...others]);
    expect((await versions())[second.key]).toBe(10);
  });

  it('prepared by two at once are written once', async () => {
    const runs = await Promise.all([sync(catalogue), sync(catalogue)]);
    expect(runs.map((run) => run.written).sort()).toEqual([0, 1]);
  });
});

it('an account that may not make extensions is told what to ask for, and goes on once they are there', async () => {
  const name = `garboard_plain_${process.pid}`;
  const maintenance = withDatabase(inject('templateUrl'), 'postgres');
  const own = withDatabase(database.url, name);
  await onServer(maintenance, `CREATE ROLE ${name} LOGIN PASSWORD 'plain'`);
  await onServer(maintenance, `CREATE DATABASE ${name}`);
  await onServer(maintenance, `GRANT garboard_app, garboard_person TO ${name}`);
  await onServer(own, `GRANT ALL ON SCHEMA public TO ${name}`);
  const url = new URL(own);
  url.username = name;
  url.password = 'plain';
  try {
    await expect(migrate({ url: url.href })).rejects.toThrow(/CREATE EXTENSION pg_trgm SCHEMA public/);
    await onServer(own, 'CREATE EXTENSION pg_trgm SCHEMA public');
    await onServer(own, 'CREATE EXTENSION unaccent SCHEMA public');
    expect((await migrate({ url: url.href })).applied).toContain('20261125144923_catalogue');
  } finally {
    await onServer(maintenance, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    await onServer(maintenance, `DROP ROLE IF EXISTS ${name}`);
  }
});
