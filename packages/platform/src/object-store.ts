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
  /** Removes what was staged longer ago than this and neither kept nor discarded. Returns how many. */
  sweepStaging(olderThanMs: number): Promise<number>;
  /** Proves that the store can be written to, by writing and removing a small file. */
  check(): Promise<void>;
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

/** The store holds no object of this hash. */
export class ObjectMissingError extends Error {
  override name = 'ObjectMissingError';
  constructor(readonly sha256: string) {
    super(`The object store holds nothing under ${sha256}.`);
  }
}

/**
 * Opens the object store at an address; `file:` (a folder, made when missing) is the only kind so far.
 * @throws Error for another kind, or when the folder can't be made.
 */
export async function openObjectStore(url: string): Promise<ObjectStore> {
  const { protocol } = new URL(url);
  if (protocol === 'file:') return openFileObjectStore(fileURLToPath(url));
  throw new Error(`OBJECT_STORE_URL: ${protocol} is not supported yet; use a file: address.`);
}
