// What the chain costs: events written a second by eight writers in one firm, one event a transaction, with and
// without it. Usage, from the root: npx tsx tests/bench/event-chain.ts
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { recordEvent } from '@garboard/core/events/record-event';
import { verifyRecord } from '@garboard/core/record/verify-record';
import { inTransaction, openDatabase } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { migrate } from '@garboard/db/migrate';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { openLogger } from '@garboard/platform/logger';
import { Client } from 'pg';
import { contextFor } from '../record/events.ts';

const [writers, seconds, perTransaction] = [8, 6, [1, 10]];
const dataDir = await mkdtemp(join(tmpdir(), 'garboard-bench-'));
const server = await startEmbeddedPostgres({ dataDir, log: openLogger('bench', 'fatal') });
const db = openDatabase(server.url, writers);
const owner = new Client({ connectionString: server.url });
try {
  await migrate({ url: server.url });
  await owner.connect();
  for (const events of perTransaction) {
    for (const chained of [true, false, true, false]) {
      await owner.query(`ALTER TABLE events ${chained ? 'ENABLE' : 'DISABLE'} TRIGGER USER`);
      const firmId = newId();
      await owner.query(`INSERT INTO firms (id, name) VALUES ($1, 'Teal Hollow')`, [firmId]);
      const end = performance.now() + seconds * 1_000;
      const counts = await Promise.all(
        Array.from({ length: writers }, async () => {
          let written = 0;
          while (performance.now() < end) {
            await inTransaction(db, [firmId], async (tx) => {
              const ctx = contextFor(tx, [firmId]);
              for (let i = 0; i < events; i += 1) {
                await recordEvent(ctx, { firmId, kind: 'survey.edited', role: 'office', data: { i } });
              }
            });
            written += events;
          }
          return written;
        }),
      );
      const rate = Math.round(counts.reduce((a, b) => a + b) / seconds);
      console.log(`${events} a transaction, ${chained ? 'chained' : 'without the chain'}: ${rate} events/s`);
      if (chained) {
        const start = performance.now();
        const { entries, broken } = await verifyRecord((work) => inTransaction(db, [firmId], work), firmId);
        const took = performance.now() - start;
        console.log(
          `  ${entries} checked in ${Math.round(took)} ms: ${broken ? broken.problem : 'unbroken'}`,
        );
      }
    }
  }
  const { rows } = await owner.query(
    'SELECT deadlocks FROM pg_stat_database WHERE datname = current_database()',
  );
  console.log(`deadlocks: ${rows[0].deadlocks}`);
} finally {
  await owner.end();
  await db.close();
  await server.stop();
  await rm(dataDir, { recursive: true, force: true });
}
process.exit(0);
