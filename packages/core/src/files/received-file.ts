import type { StagedObject } from '@garboard/platform/object-store';

/** A file of an upload as it came in: staged, or too large to be kept. */
export interface ReceivedFile {
  name: string;
  /** Null when it was longer than `maxBytes`. */
  staged: StagedObject | null;
  maxBytes: number;
}

/** A file whose contents were looked at and found good. */
export interface AcceptedFile {
  name: string;
  staged: StagedObject;
  mediaType: string;
  /** Pixels, upright by EXIF; null for a document. */
  size: { width: number; height: number } | null;
  takenAt: Date | null;
}

/** A file that can't be taken, and the sentence that says why and what to do. */
export interface RefusedUpload {
  name: string;
  problem: string;
  tooLarge: boolean;
}

/** What became of the files of one upload. */
export interface Upload {
  accepted: AcceptedFile[];
  refused: RefusedUpload[];
}
