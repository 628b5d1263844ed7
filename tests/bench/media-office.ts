import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Database, inTransaction, openDatabase } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { migrate } from '@garboard/db/migrate';
import { startEmbeddedPostgres } from '@garboard/platform/embedded-postgres';
import { openLogger } from '@garboard/platform/logger';
import { type ObjectStore, openObjectStore } from '@garboard/platform/object-store';
import { buildFirm, type Signed } from '@garboard/seed/builders';
import sharp from 'sharp';

/** A database, a folder and a store, for the parts of the bench that move pictures. */
export interface MediaOffice {
  databaseUrl: string;
  db: Database;
  dataDir: string;
  store: ObjectStore;
  firmId: string;
  surveyor: Signed;
  close(): Promise<void>;
}

/**
 * Opens an office of one firm, on a database of its own that writes to the disk as in earnest.
 *
 * @param databaseUrl a migrated database to use instead, for tests
 */
export async function openMediaOffice(databaseUrl?: string): Promise<MediaOffice> {
  const dataDir = await mkdtemp(join(tmpdir(), 'garboard-bench-'));
  const log = openLogger('bench', 'fatal');
  const postgres = databaseUrl ? undefined : await startEmbeddedPostgres({ dataDir, log });
  const url = databaseUrl ?? postgres?.url ?? '';
  if (postgres) await migrate({ url });
  const db = openDatabase(url, 6);
  const store = await openObjectStore(pathToFileURL(join(dataDir, 'objects')).href, dataDir);
  const firm = await buildFirm(db, ['surveyor']);
  return {
    databaseUrl: url,
    db,
    dataDir,
    store,
    firmId: firm.id,
    surveyor: firm.surveyor,
    async close() {
      await db.close();
      await postgres?.stop();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}

/** A survey on which the office is at work, without findings. Answers its id. */
export async function buildSurvey({ db, firmId, surveyor }: MediaOffice): Promise<string> {
  const [vesselId, surveyId] = [newId(), newId()];
  await inTransaction(db, [firmId], async (tx) => {
    await tx.vessel.create({ data: { id: vesselId, firmId, name: 'Copper Dunlin' } });
    await tx.survey.create({
      data: {
        ...{ id: surveyId, firmId, vesselId, surveyorId: surveyor.id },
        ...{ number: `2026-${surveyId.slice(-6)}`, purpose: 'insurance', state: 'drafting', timeZone: 'UTC' },
      },
    });
  });
  return surveyId;
}

/**
 * A photograph-like JPEG of 12 million pixels and 3 MB (less when asked for): soft shapes under the fine grain of a
 * telephone's camera, which is what takes the bytes.
 */
export async function makePhoto(width = 4032, height = 3024): Promise<Buffer> {
  const grain = { type: 'gaussian', mean: 128, sigma: 38 } as const;
  const [w, h] = [Math.round(width / 2), Math.round(height / 2)];
  const soft = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}"><defs><linearGradient id="g" x2="1" y2="1">
    <stop stop-color="#7a8f94"/><stop offset=".6" stop-color="#c9bda5"/><stop offset="1" stop-color="#4a3d33"/></linearGradient></defs>
    <rect width="100%" height="100%" fill="url(#g)"/><circle cx="40%" cy="55%" r="22%" fill="#8a5a3c"/></svg>`;
  const noise = await sharp({
    create: { width: w, height: h, channels: 3, background: '#808080', noise: grain },
  })
    .png()
    .toBuffer();
  const scene = await sharp(Buffer.from(soft))
    .composite([{ input: noise, blend: 'soft-light' }])
    .removeAlpha()
    .raw()
    .toBuffer();
  return sharp(scene, { raw: { width: w, height: h, channels: 3 } })
    .resize(width, height)
    .jpeg({ quality: 82 })
    .toBuffer();
}

/** The same picture as another file: its number is written into a comment, so that no two have the same hash. */
export function numbered(photo: Buffer, n: number): Buffer {
  const words = Buffer.from(`photo ${n}`);
  const comment = Buffer.from([0xff, 0xfe, 0, words.length + 2]);
  return Buffer.concat([photo.subarray(0, 2), comment, words, photo.subarray(2)]);
}
