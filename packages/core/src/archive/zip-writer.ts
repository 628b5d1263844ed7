import { createHash } from 'node:crypto';
import { Readable, Transform, type Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';

export interface Written {
  bytes: number;
  sha256: string;
}

/** Writes a ZIP file (zip64 where it must be) as its entries come; none is held in memory. */
export interface ZipWriter {
  /** Adds an entry and waits until it is written. @throws whatever its source or the file throws */
  add(
    name: string,
    source: AsyncIterable<string | Uint8Array>,
    options: { compress: boolean },
  ): Promise<Written>;
  /** Writes the list of entries and waits until the file is whole. */
  end(): Promise<void>;
}

/** @param out gets the file; it is ended by `end()` and destroyed when something fails */
export function openZipWriter(out: Writable, mtime: Date): ZipWriter {
  const zip = new ZipFile();
  let failed: unknown;
  const fail = (error: unknown) => {
    failed ??= error;
    out.destroy(error instanceof Error ? error : new Error(String(error)));
  };
  zip.on('error', fail);
  const writing = pipeline(zip.outputStream, out);
  // Whoever adds is told; nobody may be adding when it fails.
  writing.catch(() => undefined);
  return {
    async add(name, source, { compress }) {
      const hash = createHash('sha256');
      let bytes = 0;
      const measured = new Transform({
        transform(chunk: Buffer, _, done) {
          hash.update(chunk);
          bytes += chunk.length;
          done(null, chunk);
        },
      });
      zip.addReadStream(measured, name, { compress, mtime, mode: 0o100644 });
      try {
        await Promise.race([
          pipeline(Readable.from(source, { objectMode: false }), measured),
          writing.then(() => Promise.reject(new Error('The file ended too early.'))),
        ]);
      } catch (error) {
        fail(error);
        measured.destroy();
        throw error;
      }
      return { bytes, sha256: hash.digest('hex') };
    },
    async end() {
      if (failed) throw failed;
      zip.end();
      await writing;
    },
  };
}
