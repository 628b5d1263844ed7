import { availableParallelism } from 'node:os';
import { Readable } from 'node:stream';
import { uploadLimits } from '@garboard/contract/limits';
import { inspectUpload } from '@garboard/core/files/inspect-upload';
import type { AcceptedFile } from '@garboard/core/files/received-file';
import { renderScene } from '../scenes/render.ts';
import type { PlannedPhoto } from '../world/photos.ts';
import type { Stage } from './stage.ts';

/** Draws pictures, as many at once as there are cores, and hands each on as an upload would. */
export async function drawAll(
  stage: Stage,
  planned: readonly PlannedPhoto[],
  onDrawn: (photo: PlannedPhoto, file: AcceptedFile) => void,
): Promise<void> {
  const queue = [...planned];
  const draw = async () => {
    for (let next = queue.shift(); next; next = queue.shift()) {
      const picture = await renderScene(next.scene, next.options);
      onDrawn(next, await received(stage, next.fileName, picture));
    }
  };
  await Promise.all(Array.from({ length: Math.max(2, availableParallelism()) }, draw));
}

/** A file as it looks after an upload, inspected like any other. */
export async function received(stage: Stage, name: string, content: Uint8Array): Promise<AcceptedFile> {
  const staged = await stage.store.stage(Readable.from([Buffer.from(content)]), {
    maxBytes: uploadLimits.photoBytes,
  });
  const { accepted, refused } = await inspectUpload([{ name, staged, maxBytes: uploadLimits.photoBytes }], {
    accepts: 'evidence',
    timeZone: 'UTC',
    now: stage.loadedAt,
  });
  const file = accepted[0];
  if (!file) throw new Error(`The demonstration's ${name} was refused: ${refused[0]?.problem}`);
  return file;
}
