import { createCipheriv, createDecipheriv, hkdfSync, randomBytes, randomUUID } from 'node:crypto';
import { link, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Env } from './env.ts';

/** The name, in DATA_DIR, of the file that holds the secret when GARBOARD_SECRET is not set. */
export const secretFileName = 'secret';

/** Encrypts what must be kept but must not be readable in the database or its copies. */
export interface Sealer {
  /** AES-256-GCM with a fresh nonce. @param purpose what it belongs to: it opens for the same purpose only. */
  seal(plain: Uint8Array, purpose: string): Buffer;
  /** @throws SealBroken when it was sealed with another secret or for another purpose, or was changed. */
  open(sealed: Uint8Array, purpose: string): Buffer;
}

/** What was sealed can't be opened with this installation's secret. */
export class SealBroken extends Error {
  override name = 'SealBroken';
}

const [nonceBytes, tagBytes] = [12, 16];

/** A sealer by a secret of at least 32 characters, from which the encryption key is derived (HKDF, SHA-256). */
export function sealerOf(secret: string): Sealer {
  const key = Buffer.from(hkdfSync('sha256', secret, '', 'garboard sealing 1', 32));
  return {
    seal(plain, purpose) {
      const nonce = randomBytes(nonceBytes);
      const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(Buffer.from(purpose));
      const text = Buffer.concat([cipher.update(plain), cipher.final()]);
      return Buffer.concat([nonce, cipher.getAuthTag(), text]);
    },
    open(sealed, purpose) {
      const bytes = Buffer.from(sealed);
      try {
        const nonce = bytes.subarray(0, nonceBytes);
        const decipher = createDecipheriv('aes-256-gcm', key, nonce, { authTagLength: tagBytes })
          .setAAD(Buffer.from(purpose))
          .setAuthTag(bytes.subarray(nonceBytes, nonceBytes + tagBytes));
        return Buffer.concat([decipher.update(bytes.subarray(nonceBytes + tagBytes)), decipher.final()]);
      } catch (error) {
        throw new SealBroken('It was sealed with another secret, or has been changed.', { cause: error });
      }
    },
  };
}

const opened = new Map<string, Promise<Sealer>>();

/**
 * The installation's sealer: by GARBOARD_SECRET, else by a random secret in a file of DATA_DIR that only its owner
 * may read, made at the first use. Whoever holds a copy of the database needs it too, and so does a restored backup.
 *
 * @throws Error when the file can't be read or made.
 */
export function openSealer(env: Pick<Env, 'dataDir' | 'secret'>): Promise<Sealer> {
  if (env.secret !== undefined) return Promise.resolve(sealerOf(env.secret));
  const path = join(env.dataDir, secretFileName);
  const sealer = opened.get(path) ?? secretFrom(path).then(sealerOf);
  opened.set(path, sealer);
  // A folder that was away may be back the next time.
  sealer.catch(() => opened.delete(path));
  return sealer;
}

async function secretFrom(path: string): Promise<string> {
  const kept = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return '';
    throw error;
  });
  if (kept.trim()) return kept.trim();
  await mkdir(join(path, '..'), { recursive: true });
  // Written aside and linked into place, so that two processes starting together agree on one.
  const mine = `${path}.${randomUUID()}`;
  try {
    await writeFile(mine, `${randomBytes(32).toString('base64url')}\n`, { mode: 0o600, flag: 'wx' });
    await link(mine, path).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  } finally {
    await rm(mine, { force: true });
  }
  return (await readFile(path, 'utf8')).trim();
}
