import type { Ctx } from '@garboard/core/context';
import { derivedSizes } from '@garboard/core/photos/derive-images';
import type { JobDeps } from '../job-deps.ts';
import { PrintError, type ReportFile } from '../render/print-report.ts';
import { derivePhotoJob } from './derive-photo.ts';
import { makePrint } from './make-print.ts';

/** Runs work in a transaction of the firm whose report is made. */
export type Within = <T>(work: (ctx: Ctx) => Promise<T>) => Promise<T>;

export interface GatherPhotos {
  firmId: string;
  /** By photo the pixels of the longer side that its place asks for, one of `printEdges` of the contract. */
  edges: ReadonlyMap<string, number>;
  within: Within;
  /** Told how many of them are there. */
  onGathered: (count: number) => void;
}

/** A photo's print could not be made this time. */
export class PhotoUnready extends Error {
  override name = 'PhotoUnready';
}

/** The name under which a photo lies beside the report's HTML. */
export const photoFileName = (photoId: string): string => `${photoId}.jpg`;

/**
 * The picture of each photo in the size of its place, made on the spot where it is missing.
 *
 * @throws PrintError naming a photo of which none can be made; PhotoUnready when trying again may help.
 */
export async function gatherPhotos(
  deps: Pick<JobDeps, 'db' | 'store' | 'log'>,
  input: GatherPhotos,
): Promise<ReportFile[]> {
  const { firmId, edges, within, onGathered } = input;
  const load = (ids: readonly string[]) =>
    within((ctx) =>
      ctx.tx.photo.findMany({
        where: { id: { in: [...ids] } },
        select: { id: true, state: true, screenHash: true, printHash: true, fileName: true, prints: true },
      }),
    );
  type Loaded = Awaited<ReturnType<typeof load>>[number];
  const photos = await load([...edges.keys()]);
  if (photos.length < edges.size) throw new PrintError('A photo of the report is no longer on file.');
  const files: ReportFile[] = [];
  for (const photo of photos) {
    // One marked or turned just now is printed so, not as it was before.
    const stale = photo.state === 'processing';
    const hash = (stale ? null : await kept(photo)) ?? (await made(photo));
    files.push({ name: photoFileName(photo.id), path: await deps.store.localFile(hash) });
    onGathered(files.length);
  }
  return files;

  async function kept(photo: Loaded): Promise<string | null> {
    const edge = edges.get(photo.id);
    const shown = [
      edge === derivedSizes.screen.edge ? photo.screenHash : null,
      edge === derivedSizes.print.edge ? photo.printHash : null,
      ...photo.prints.filter((print) => print.edge === edge).map((print) => print.sha256),
    ];
    for (const hash of shown) if (hash !== null && (await deps.store.has(hash))) return hash;
    return null;
  }

  async function made(photo: Loaded): Promise<string> {
    const edge = edges.get(photo.id) ?? derivedSizes.print.edge;
    // Not as the photo's own last attempt: that this report fails doesn't mean that the photo is bad.
    try {
      await derivePhotoJob(deps, { firmId, photoId: photo.id }, { lastAttempt: false });
      const [derived] = await load([photo.id]);
      const hash =
        derived && ((await kept(derived)) ?? (await makePrint(deps, { within, photoId: photo.id, edge })));
      if (hash) return hash;
    } catch (error) {
      throw new PhotoUnready(
        `The photo ${photo.fileName} could not be prepared for printing. Take it out or upload it again, then ask for the report again.`,
        { cause: error },
      );
    }
    throw new PrintError(`The photo ${photo.fileName} could not be read when its print was made.`);
  }
}
