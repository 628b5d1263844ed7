import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { openFileObjectStore } from './file-object-store.ts';

/** Keeps files under the SHA-256 of their bytes (64 lower-case hex digits). It doesn't know who may read them. */
export interface ObjectStore {
  /**
   * Receives a file into a waiting area, computing its hash on the way; nothing is kept until `keep()`.
   * @throws ObjectTooLargeError when it is longer than the limit; whatever error the source ends with.
   */
  stage(source: Readable, limits: StageLimits): Promise<StagedObject>;
  /** Opens an object for reading. @throws ObjectMissingError */
  read(sha256: string): Promise<{ stream: Readable; bytes: number }>;
  /** Path of a file holding the bytes; read it, never write or move it. @throws ObjectMissingError */
  localFile(sha256: string): Promise<string>;
  has(sha256: string): Promise<boolean>;
  /** Removes an object; one that isn't there is no error. */
  remove(sha256: string): Promise<void>;
  /** Every object, in no particular order, with its length and when it was kept. */
  objects(): AsyncIterable<KeptObject>;
  /** Removes what was staged longer ago than this and neither kept nor discarded. Returns how many. */
  sweepStaging(olderThanMs: number): Promise<number>;
  /**
   * Keeps a part of a file that comes in several requests, safe on the disk when it resolves; another at the same
   * offset is replaced. `key` is a UUID.
   */
  putPart(key: string, offset: number, bytes: Uint8Array): Promise<void>;
  /** Reads the parts as one file of this length. The stream ends with PartsMissingError when one isn't there. */
  readParts(key: string, bytes: number): Readable;
  /** Removes the parts of a file; none being there is no error. */
  dropParts(key: string): Promise<void>;
  /** Removes the parts of files to which nothing was added for this long. Returns of how many files. */
  sweepParts(olderThanMs: number): Promise<number>;
  /** Proves that the store can be written to, by writing and removing a small file. */
  check(): Promise<void>;
}

/** An object of the store, as a listing shows it. */
export interface KeptObject {
  sha256: string;
  bytes: number;
  keptAt: Date;
}

/** Limits of one staged file. */
export interface StageLimits {
  maxBytes: number;
  /**
   * When the file is too large: false (the default) destroys the source at once; true reads it to its end,
   * keeping nothing, so that the next file of the same multipart body can still be read.
   */
  drainWhenTooLarge?: boolean;
}

/** A received file that is not yet part of the store. */
export interface StagedObject {
  readonly sha256: string;
  readonly bytes: number;
  /** Where the bytes are now; follows the file when it is kept. */
  readonly localPath: string;
  /** Makes it part of the store, atomically; when the same bytes are there already the staged copy goes. */
  keep(): Promise<void>;
  /** Drops it; after `keep()` this does nothing. */
  discard(): Promise<void>;
}

/** A file is longer than allowed. */
export class ObjectTooLargeError extends Error {
  override name = 'ObjectTooLargeError';
  constructor(readonly maxBytes: number) {
    super(`The file is larger than the ${maxBytes} bytes allowed.`);
  }
}

/** Parts that were kept before are no longer there, or not of the length that was said. */
export class PartsMissingError extends Error {
  override name = 'PartsMissingError';
  constructor(readonly key: string) {
    super(`The object store doesn’t hold all parts of ${key}.`);
  }
}

/** The store holds no object of this hash. */
export class ObjectMissingError extends Error {
  override name = 'ObjectMissingError';
  constructor(readonly sha256: string) {
    super(`The object store holds nothing under ${sha256}.`);
  }
}

/**
 * Opens the object store at an address: `file:`, a folder, made when missing; or `s3:`, a bucket.
 * @param dataDir where an S3 store works on this machine
 * @throws Error for another kind, or when the folder can't be made.
 */
export async function openObjectStore(url: string, dataDir: string): Promise<ObjectStore> {
  const { protocol } = new URL(url);
  if (protocol === 'file:') return openFileObjectStore(fileURLToPath(url));
  // Loaded when needed: the SDK is large.
  const { openS3ObjectStore } = await import('./s3-object-store.ts');
  return openS3ObjectStore(url, join(dataDir, 's3'));
}
