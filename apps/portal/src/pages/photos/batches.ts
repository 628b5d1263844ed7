// Small enough that progress and thumbnails come early, large enough that a day's photos take a dozen requests.
const batchFiles = 10;
const batchBytes = 60_000_000;

/** Takes the next files to go in one request off the queue; none when it is empty. */
export function takeBatch<T extends { file: { size: number } }>(queue: T[]): T[] {
  let bytes = 0;
  let n = 0;
  for (const { file } of queue) {
    if (n > 0 && (n === batchFiles || bytes + file.size > batchBytes)) break;
    bytes += file.size;
    n += 1;
  }
  return queue.splice(0, n);
}

/** How much of each file has left, when a share of them all has: they go one after the other. */
export function shares(sizes: readonly number[], sent: number): number[] {
  let left = sizes.reduce((sum, size) => sum + size, 0) * sent;
  return sizes.map((size) => {
    const part = size === 0 ? 1 : Math.min(1, Math.max(0, left / size));
    left -= size;
    return part;
  });
}
