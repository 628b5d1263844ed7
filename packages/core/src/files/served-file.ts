/** A stored file that the caller may have, and how it is to be handed over. */
export interface ServedFile {
  sha256: string;
  mediaType: string;
  fileName: string;
  /** Whether the address names the content, so that caches may keep the answer for ever. */
  immutable: boolean;
  /** To be saved rather than shown; set for whatever a browser might run. */
  download: boolean;
}
