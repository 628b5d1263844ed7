import { Readable } from 'node:stream';
import { printEdges } from '@garboard/contract/print-sizes';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { systems } from '@garboard/trade/vocabulary';
import sharp from 'sharp';
import { buildSurvey, type MediaOffice, numbered } from './media-office.ts';

const photosAFinding = 3;
const observed =
  'The cover of the hose is cracked over 40 mm at the aft clamp, and the braid below it is brown with rust. ' +
  'Pressed by hand it gives more than the rest of its length. Nothing leaked while the engine ran for ten minutes.';

/** Photos that are on file with all sizes, as after the worker has been at them; each survey may show all of them. */
export interface PhotosOnFile {
  original: string[];
  thumb: string[];
  screen: string[];
  /** By edge in pixels. */
  prints: Map<number, string[]>;
}

/** Puts so many photos' files into the store: one picture, each file with bytes of its own. */
export async function filePhotos(
  { store }: MediaOffice,
  photo: Buffer,
  count: number,
): Promise<PhotosOnFile> {
  const keepAll = async (edge: number | null) => {
    const picture =
      edge === null
        ? photo
        : await sharp(photo).resize(edge, edge, { fit: 'inside' }).jpeg({ quality: 76 }).toBuffer();
    const hashes: string[] = [];
    for (let n = 0; n < count; n += 1) {
      const staged = await store.stage(Readable.from([numbered(picture, n)]), { maxBytes: 1e9 });
      await staged.keep();
      hashes.push(staged.sha256);
    }
    return hashes;
  };
  const prints = new Map<number, string[]>();
  for (const edge of printEdges) prints.set(edge, await keepAll(edge));
  return {
    // Never read: every size that is printed is there.
    original: Array.from({ length: count }, (_, n) => n.toString(16).padStart(64, '0')),
    thumb: await keepAll(320),
    screen: prints.get(1600) ?? [],
    prints,
  };
}

/** A survey that is ready to be issued, its photos spread over findings by threes. Answers its id. */
export async function buildReadySurvey(
  office: MediaOffice,
  photos: PhotosOnFile,
  count: number,
): Promise<string> {
  const { db, firmId } = office;
  const surveyId = await buildSurvey(office);
  const photoIds = Array.from({ length: count }, () => newId());
  const findingIds = Array.from({ length: Math.ceil(count / photosAFinding) }, () => newId());
  const own = { firmId, surveyId };
  await inTransaction(db, [firmId], async (tx) => {
    await tx.survey.update({
      where: { id: surveyId },
      data: { findingCount: findingIds.length, photoCount: count },
    });
    await tx.attendance.create({
      data: {
        ...own,
        ...{ id: newId(), ordinal: 1, date: new Date('2026-05-04'), place: 'Arlen', condition: 'ashore' },
      },
    });
    await tx.coverageAnswer.createMany({
      data: systems.map((system) => ({ ...own, system, reached: 'examined' })),
    });
    await tx.photo.createMany({
      data: photoIds.map((id, n) => ({
        ...{ id, ...own, sha256: photos.original[n] ?? '', bytes: 3_000_000, mediaType: 'image/jpeg' },
        ...{ fileName: `IMG_${n}.jpg`, width: 4032, height: 3024, orderKey: `${n}`.padStart(6, '0') },
        ...{ state: 'ready', caption: `The hose at clamp ${n + 1}` },
        ...{ thumbHash: photos.thumb[n] ?? '', screenHash: photos.screen[n] ?? '' },
        printHash: photos.prints.get(1200)?.[n] ?? '',
      })),
    });
    await tx.photoPrint.createMany({
      data: [...photos.prints].flatMap(([edge, hashes]) =>
        photoIds.map((photoId, n) => ({ firmId, photoId, edge, sha256: hashes[n] ?? '' })),
      ),
    });
    await tx.finding.createMany({
      data: findingIds.map((id, n) => ({
        ...{ id, ...own, number: n + 1, system: 'fuel', title: `Fuel hose ${n + 1} hardened`, observed },
        ...{ recommendation: 'Renew the hose with one of type A1 and both clamps.', references: [] },
        ...{ urgency: 'within-days', withinDays: 30, harms: ['fire-explosion'] },
        position: { along: 0.5, height: 0.5, side: 'port' },
      })),
    });
    await tx.findingPhoto.createMany({
      data: photoIds.map((photoId, n) => ({
        ...{ firmId, photoId, findingId: findingIds[Math.floor(n / photosAFinding)] ?? '' },
        ordinal: 1 + (n % photosAFinding),
      })),
    });
  });
  return surveyId;
}
