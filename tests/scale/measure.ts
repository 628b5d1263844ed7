// npx tsx tests/scale/measure.ts: measures on this machine what the page "What a thousand firms need" of DEVELOPERS.md is worked out
// from: bytes of a row with its indexes in an office of 1 000 surveys, bytes of a photo and its sizes, and the processor
// time that drawing these takes.
import { chmod, mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { recordEvent } from '@garboard/core/events/record-event';
import { deriveImages, derivePrints, readUpright } from '@garboard/core/photos/derive-images';
import { inTransaction, openDatabase } from '@garboard/db/database';
import { migrate } from '@garboard/db/migrate';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { openLogger } from '@garboard/platform/logger';
import { openObjectStore } from '@garboard/platform/object-store';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { Client } from 'pg';
import { makePhoto } from '../bench/media-office.ts';
import { contextFor } from '../record/events.ts';
import { loadOffice, officeId } from '../support/office.ts';

const folder = await mkdtemp(join(tmpdir(), 'garboard-capacity-'));
await chmod(folder, 0o711);
const server = await startEmbeddedPostgres({
  dataDir: folder,
  log: openLogger('capacity', 'fatal'),
  throwaway: true,
});
try {
  await migrate({ url: server.url });
  const db = openDatabase(server.url, 2);
  const firm = await buildFirm(db, ['surveyor']);
  const [insurer, owner] = [await buildPerson(db), await buildPerson(db)];
  const people = {
    firms: [{ id: firm.id, surveyor: firm.surveyor.id }],
    insurer: insurer.id,
    owner: owner.id,
  };
  await loadOffice(server.url, { surveys: 1_000 }, people);
  for (let n = 0; n < 1_000; n += 1) {
    await inTransaction(db, [firm.id], (tx) =>
      recordEvent(contextFor(tx, [firm.id]), {
        ...{ firmId: firm.id, surveyId: officeId('survey', n), kind: 'survey.edited', role: 'office' },
      }),
    );
  }
  await db.close();
  await tellRowSizes(server.url);
  await tellPhotoSizes();
} finally {
  await server.stop();
  await rm(folder, { recursive: true, force: true, maxRetries: 5 });
}

async function tellRowSizes(url: string): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  await client.query('VACUUM ANALYZE');
  const { rows } = await client.query(`
    SELECT relname AS "table", reltuples::int AS rows,
        round(pg_table_size(oid) / reltuples) AS "bytes a row",
        round(pg_indexes_size(oid) / reltuples) AS "of indexes",
        round(pg_total_relation_size(oid) / 1e6, 1)::float AS megabytes
      FROM pg_class WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace AND reltuples >= 500
     ORDER BY pg_total_relation_size(oid) DESC`);
  console.table(rows);
  await client.end();
}

async function tellPhotoSizes(): Promise<void> {
  const path = join(folder, 'photo.jpg');
  await writeFile(path, await makePhoto());
  const store = await openObjectStore(pathToFileURL(join(folder, 'objects')).href, folder);
  const before = process.cpuUsage();
  const upright = await readUpright(path, 'image/jpeg', 0);
  const { screen, thumb } = await deriveImages(store, upright, ['screen', 'thumb'], []);
  const { user, system } = process.cpuUsage(before);
  const prints = await derivePrints(store, upright, [480, 900], []);
  console.table({
    original: { bytes: (await stat(path)).size },
    screen: { bytes: screen.bytes },
    thumb: { bytes: thumb.bytes },
    ...Object.fromEntries([...prints].map(([edge, made]) => [`print of ${edge} px`, { bytes: made.bytes }])),
  });
  console.log(`Screen and thumb drawn in ${Math.round((user + system) / 1_000)} ms of processor time`);
}
