/** An archive can't be made or brought in; the message is a sentence that says why and what to do. */
export class ArchiveRefused extends Error {
  override name = 'ArchiveRefused';
}
