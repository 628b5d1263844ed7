import { Worker } from 'node:worker_threads';
import { uploadLimits } from '@garboard/contract/limits';

export interface HeicTask {
  path: string;
  maxPixels: number;
}
export type HeicAnswer =
  | { data: Uint8Array<ArrayBuffer>; width: number; height: number }
  | { problem: string };

/** A HEIC file that will never be read, however often it is tried. */
export class HeicUnreadable extends Error {
  override name = 'HeicUnreadable';
}

/** A picture of a hundred million pixels takes a tenth of it. */
const timeoutMs = 120_000;

/**
 * Decodes the main picture of a HEIC file, turned as the file itself says, in a thread of its own so that the caller
 * goes on living.
 *
 * @returns red, green, blue and alpha, a byte each
 * @throws HeicUnreadable when the file is damaged or takes too long
 */
export async function decodeHeic(path: string): Promise<{ data: Buffer; width: number; height: number }> {
  const workerData: HeicTask = { path, maxPixels: uploadLimits.pixels };
  const thread = new Worker(new URL('./heic-thread.mjs', import.meta.url), { workerData, execArgv: [] });
  const answer = await new Promise<HeicAnswer>((resolve) => {
    const timer = setTimeout(() => resolve({ problem: 'decoding took too long' }), timeoutMs);
    thread.once('message', resolve);
    thread.once('error', (error) => resolve({ problem: error.message }));
    thread.once('exit', () => {
      clearTimeout(timer);
      resolve({ problem: 'the decoder ended without an answer' });
    });
  });
  await thread.terminate();
  if ('problem' in answer) throw new HeicUnreadable(`The HEIC file could not be decoded: ${answer.problem}.`);
  const { data, width, height } = answer;
  return { data: Buffer.from(data.buffer), width, height };
}
