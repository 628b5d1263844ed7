import type { Ctx } from '@garboard/core/context';
import type { JobDeps } from '../job-deps.ts';
import { PrintError, type ReportFile } from '../render/print-report.ts';
import { derivePhotoJob } from './derive-photo.ts';

/** Runs work in a transaction of the firm whose report is made. */
export type Within = <T>(work: (ctx: Ctx) => Promise<T>) => Promise<T>;

export interface GatherPhotos {
  firmId: string;
  photoIds: readonly string[];
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
 * The print-size picture of each photo, made on the spot where it is missing.
 *
 * @throws PrintError naming a photo of which none can be made; PhotoUnready when trying again may help.
 */
export async function gatherPhotos(deps: JobDeps, input: GatherPhotos): Promise<ReportFile[]> {
  const { firmId, photoIds, within, onGathered } = input;
  const load = (ids: readonly string[]) =>
    within((ctx) =>
      ctx.tx.photo.findMany({
        where: { id: { in: [...ids] } },
        select: { id: true, printHash: true, fileName: true },
      }),
    );
  const photos = await load(photoIds);
  if (photos.length < photoIds.length) throw new PrintError('A photo of the report is no longer on file.');
  const files: ReportFile[] = [];
  for (const photo of photos) {
    const hash = (await usable(deps, photo.printHash)) ?? (await derive(photo));
    files.push({ name: photoFileName(photo.id), path: await deps.store.localFile(hash) });
    onGathered(files.length);
  }
  return files;

  async function derive(photo: { id: string; fileName: string }): Promise<string> {
    // Not as the photo's own last attempt: that this report fails doesn't mean that the photo is bad.
    try {
      await derivePhotoJob(deps, { firmId, photoId: photo.id }, { lastAttempt: false });
    } catch (error) {
      throw new PhotoUnready(
        `The photo ${photo.fileName} could not be prepared for printing. Take it out or upload it again, then ask for the report again.`,
        { cause: error },
      );
    }
    const [made] = await load([photo.id]);
    const hash = made && (await usable(deps, made.printHash));
    if (!hash) throw new PrintError(`The photo ${photo.fileName} could not be read when its print was made.`);
    return hash;
  }
}

async function usable(deps: JobDeps, hash: string | null): Promise<string | null> {
  return hash !== null && (await deps.store.has(hash)) ? hash : null;
}
