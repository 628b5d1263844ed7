/** What is the matter with a store that can't do what it was asked: there is no room, or it can't be reached. */
export type StoreTrouble = 'full' | 'away';

const fullCodes = new Set(['ENOSPC', 'EDQUOT', 'XMinioStorageFull', 'InsufficientStorage', 'QuotaExceeded']);
/** Of a disk: broken, made read-only, without handles left. */
const diskCodes = new Set(['EIO', 'EROFS', 'EMFILE', 'ENFILE', 'ESTALE', 'ENODEV']);

interface Told {
  code?: unknown;
  name?: unknown;
  cause?: unknown;
  /** On every error of the AWS SDK, also when no answer came. */
  $metadata?: { httpStatusCode?: number };
}

/**
 * Whether an error of an object store says that nothing can be kept or read just now; null when it is about the object
 * itself, or no error of a store. For a folder, what its disk says; for a bucket, whatever is not an answer about one
 * object.
 */
export function storeTrouble(error: unknown, depth = 0): StoreTrouble | null {
  if (typeof error !== 'object' || error === null || depth > 5) return null;
  const { code, name, cause, $metadata }: Told = error;
  if ([code, name].some((word) => typeof word === 'string' && fullCodes.has(word))) return 'full';
  if ($metadata) return $metadata.httpStatusCode === 507 ? 'full' : 'away';
  if (typeof code === 'string' && diskCodes.has(code)) return 'away';
  return storeTrouble(cause, depth + 1);
}
