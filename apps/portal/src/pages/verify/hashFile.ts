import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/**
 * SHA-256 of a file, read part by part, so that a large one takes no memory. Not by the browser's own function,
 * which is there on secure addresses only and wants the whole file at once.
 */
export async function hashFile(file: Blob): Promise<string> {
  const hash = sha256.create();
  const reader = file.stream().getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return bytesToHex(hash.digest());
    hash.update(value);
  }
}
