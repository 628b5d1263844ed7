// The sizes made of each photo: by the worker's job, beside sharp alone making the same sizes of the same files.
import { Readable } from 'node:stream';
import { usualPrintEdges } from '@garboard/contract/print-sizes';
import { sharp } from '@garboard/core/files/sharp';
import { derivedSizes } from '@garboard/core/photos/derive-images';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { openLogger } from '@garboard/platform/logger';
import { derivePhotoJob } from '@garboard/worker/jobs/derive-photo';
import type { Bench, Part, Round } from './harness.ts';
import { buildSurvey, type MediaOffice, makePhoto, numbered, openMediaOffice } from './media-office.ts';

/** As many at once as the worker's queue of pictures takes. */
const atOnce = 2;

export const run: Part = async (bench) => {
  const office = await openMediaOffice();
  try {
    await measureDerivatives(bench, office, { photo: await makePhoto(), photos: 12 });
  } finally {
    await office.close();
  }
};

/** Measures the making of all sizes of some photos. */
export async function measureDerivatives(
  bench: Bench,
  office: MediaOffice,
  sizes: { photo: Buffer; photos: number },
): Promise<void> {
  const { db, store, firmId } = office;
  const surveyId = await buildSurvey(office);
  const deps = { db, store, log: openLogger('bench', 'fatal') };
  const ids: string[] = [];
  const paths: string[] = [];
  for (let n = 0; n < sizes.photos; n += 1) {
    const staged = await store.stage(Readable.from([numbered(sizes.photo, n)]), { maxBytes: 1e9 });
    await staged.keep();
    paths.push(staged.localPath);
    const id = newId();
    ids.push(id);
    const { width = 0, height = 0 } = await sharp(staged.localPath).metadata();
    const file = { sha256: staged.sha256, bytes: staged.bytes, mediaType: 'image/jpeg', fileName: 'a.jpg' };
    await inTransaction(db, [firmId], (tx) =>
      tx.photo.create({ data: { id, firmId, surveyId, ...file, width, height, orderKey: id } }),
    );
  }
  const ours = async (): Promise<Round> => {
    const anew = { state: 'processing', screenHash: null, printHash: null, thumbHash: null };
    await inTransaction(db, [firmId], (tx) => tx.photo.updateMany({ where: { surveyId }, data: anew }));
    return eachOf(ids, (photoId) => derivePhotoJob(deps, { firmId, photoId }, { lastAttempt: true }));
  };
  await bench.compare([
    { what: 'all sizes of 12 million pixels', unit: 'photos/s', ours, floor: () => eachOf(paths, bare) },
  ]);
}

/** The same sizes with sharp alone: decoded once, kept nowhere. */
async function bare(path: string): Promise<void> {
  const { screen, print, thumb } = derivedSizes;
  const edge = screen.edge;
  const { data, info } = await sharp(path, { sequentialRead: true })
    .autoOrient()
    .resize(edge, edge, { fit: 'inside', withoutEnlargement: true })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const raw = { width: info.width, height: info.height, channels: info.channels as 3 };
  const prints = usualPrintEdges.map((side) => ({ edge: side, quality: print.quality }));
  for (const size of [screen, print, thumb, ...prints]) {
    await sharp(data, { raw })
      .resize(size.edge, size.edge, { fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: size.quality })
      .toBuffer();
  }
}

async function eachOf<T>(all: readonly T[], work: (one: T) => Promise<void>): Promise<Round> {
  const left = [...all];
  const begun = performance.now();
  const take = async () => {
    for (let one = left.shift(); one !== undefined; one = left.shift()) await work(one);
  };
  await Promise.all(Array.from({ length: atOnce }, take));
  return { value: all.length / ((performance.now() - begun) / 1000) };
}
