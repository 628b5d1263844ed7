// Runs as a thread of its own (see decode-heic.ts): decoding keeps the processor for a second or more, and what a
// damaged file does to the decoder's memory ends with the thread. JavaScript, since a thread doesn't inherit the
// means by which its starter runs TypeScript.
import { readFile } from 'node:fs/promises';
import { parentPort, workerData } from 'node:worker_threads';
import libheif from 'libheif-js/wasm-bundle.js';

/** @returns {Promise<import('./decode-heic.ts').HeicAnswer>} */
async function decode() {
  const images = new libheif.HeifDecoder().decode(await readFile(workerData.path));
  const image = images.find((candidate) => candidate.is_primary()) ?? images[0];
  if (!image) return { problem: 'no picture was found in it' };
  const [width, height] = [image.get_width(), image.get_height()];
  if (width * height > workerData.maxPixels) return { problem: `it has ${width} by ${height} pixels` };
  const data = new Uint8ClampedArray(width * height * 4);
  const shown = await new Promise((resolve) => image.display({ data, width, height }, resolve));
  if (!shown) return { problem: 'its picture is damaged' };
  return { data: new Uint8Array(data.buffer), width, height };
}

const answer = await decode();
parentPort?.postMessage(answer, 'data' in answer ? [answer.data.buffer] : []);
