import { importLimits, uploadLimits } from '@garboard/contract/limits';
import { cleanFileName } from '@garboard/core/files/file-name';
import type { Accepts } from '@garboard/core/files/inspect-upload';
import type { ReceivedFile } from '@garboard/core/files/received-file';
import { Refusal } from '@garboard/core/problems';
import { type ObjectStore, ObjectTooLargeError } from '@garboard/platform/object-store';
import type { FastifyRequest } from 'fastify';

export interface ReceivedForm {
  fields: Record<string, string>;
  files: ReceivedFile[];
  /** Drops every staged file that was not kept. */
  discard(): Promise<void>;
}

/** What a form may hold: pictures, evidence, or a sheet of findings with a ZIP of photos. */
export type FormAccepts = Accepts | 'sheet';

/** The most bytes that any kind of file accepted may have; inspection knows the limit of each kind. */
const maxBytesOf = (accepts: FormAccepts): number =>
  accepts === 'sheet'
    ? importLimits.zipBytes
    : accepts === 'pictures'
      ? uploadLimits.photoBytes
      : Math.max(uploadLimits.photoBytes, uploadLimits.documentBytes);

/**
 * Reads a multipart form, each file straight into the store's waiting area. A file that is too large is noted and
 * the rest still read; when the form breaks off, nothing stays behind.
 */
export async function receiveForm(
  request: FastifyRequest,
  store: ObjectStore,
  accepts: FormAccepts,
): Promise<ReceivedForm> {
  const maxBytes = maxBytesOf(accepts);
  const fields: Record<string, string> = {};
  const files: ReceivedFile[] = [];
  const discard = async () => {
    await Promise.all(files.map((file) => file.staged?.discard()));
  };
  try {
    // One byte more than accepted is let through, so that the store notices; the parser skips the rest by itself.
    const options = { limits: { fileSize: maxBytes + 1 }, throwFileSizeLimit: false };
    for await (const part of wellFormed(request.parts(options))) {
      if (part.type === 'field') {
        if (part.valueTruncated) throw new Refusal('too-large', `The field ${part.fieldname} is too long.`);
        fields[part.fieldname] = String(part.value);
        continue;
      }
      const name = cleanFileName(part.filename);
      try {
        const staged = await store.stage(part.file, { maxBytes, drainWhenTooLarge: true });
        files.push({ name, staged, maxBytes });
      } catch (error) {
        if (!(error instanceof ObjectTooLargeError)) throw error;
        files.push({ name, staged: null, maxBytes });
      }
    }
  } catch (error) {
    await discard();
    throw isBrokenOff(error) ? brokenOff() : error;
  }
  return { fields, files, discard };
}

const brokenOff = () =>
  new Refusal('malformed-json', 'The form breaks off before its end, or is not one. Send it again, whole.');

/** The parts of a form. What its parser throws has no code, unlike what goes wrong with the connection or a limit. */
async function* wellFormed<Part>(parts: AsyncIterable<Part>): AsyncGenerator<Part> {
  try {
    yield* parts;
  } catch (error) {
    throw error instanceof Error && !('code' in error) ? brokenOff() : error;
  }
}

/** The parser tells it to the file that is being read, too. */
const isBrokenOff = (error: unknown): boolean =>
  error instanceof Error && /unexpected end of multipart data/i.test(error.message);
