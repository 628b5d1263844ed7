import { createHash } from 'node:crypto';
import { PDFArray, type PDFDict, PDFHexString, PDFName, type PDFObject, PDFRef } from 'pdf-lib';
import type { PdfFile } from './pdf-file.ts';

/** What is added at the end of a PDF (ISO 32000-2, 7.5.6): new objects, and new versions of old ones. */
export class PdfUpdate {
  readonly #file: PdfFile;
  readonly #objects = new Map<number, PDFObject | Buffer>();
  #next: number;

  constructor(file: PdfFile) {
    this.#file = file;
    this.#next = file.objectCount;
  }

  /** Adds an object; bytes are written as they are. */
  add(object: PDFObject | Buffer): PDFRef {
    const ref = PDFRef.of(this.#next++);
    this.#objects.set(ref.objectNumber, object);
    return ref;
  }

  /** Puts a new version in the place of an object. */
  replace(ref: PDFRef, object: PDFObject): void {
    this.#objects.set(ref.objectNumber, object);
  }

  /**
   * The bytes to be written after the last of the file.
   *
   * @param changed entries of the trailer that differ from the one before.
   */
  build(changed: Record<string, PDFObject>): { bytes: Buffer; offsetOf: (ref: PDFRef) => number } {
    const chunks: Buffer[] = [Buffer.from('\n')];
    const offsets = new Map<number, number>();
    let length = 1;
    const write = (bytes: Buffer) => {
      chunks.push(bytes);
      length += bytes.length;
    };
    const numbers = [...this.#objects.keys()].sort((a, b) => a - b);
    for (const number of numbers) {
      offsets.set(number, this.#file.size + length);
      write(Buffer.from(`${number} 0 obj\n`));
      write(bytesOf(this.#objects.get(number)));
      write(Buffer.from('\nendobj\n'));
    }
    const startXref = this.#file.size + length;
    write(Buffer.from(`xref\n${sections(numbers, offsets)}`));
    write(Buffer.from('trailer\n'));
    write(bytesOf(this.#trailer(changed, chunks)));
    write(Buffer.from(`\nstartxref\n${startXref}\n%%EOF\n`));
    return {
      bytes: Buffer.concat(chunks),
      offsetOf: (ref) => offsets.get(ref.objectNumber) ?? Number.NaN,
    };
  }

  #trailer(changed: Record<string, PDFObject>, written: readonly Buffer[]): PDFDict {
    const { context, trailer, startXref } = this.#file;
    const next = trailer.clone(context);
    next.set(PDFName.of('Size'), context.obj(this.#next));
    next.set(PDFName.of('Prev'), context.obj(startXref));
    for (const [key, value] of Object.entries(changed)) next.set(PDFName.of(key), value);
    // The first half stays that of the file before; the second tells this one from it.
    const hash = createHash('sha256');
    for (const chunk of written) hash.update(chunk);
    const id = PDFHexString.of(hash.digest('hex').slice(0, 32).toUpperCase());
    const before = trailer.lookupMaybe(PDFName.of('ID'), PDFArray)?.get(0) ?? id;
    next.set(PDFName.of('ID'), context.obj([before, id]));
    return next;
  }
}

function bytesOf(object: PDFObject | Buffer | undefined): Buffer {
  if (object === undefined || Buffer.isBuffer(object)) return object ?? Buffer.alloc(0);
  const bytes = Buffer.alloc(object.sizeInBytes());
  object.copyBytesInto(bytes, 0);
  return bytes;
}

/** The cross-reference table's sections: one for each run of numbers. */
function sections(numbers: readonly number[], offsets: ReadonlyMap<number, number>): string {
  const runs: number[][] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run && run.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  const entry = (number: number) => `${String(offsets.get(number)).padStart(10, '0')} 00000 n \n`;
  return runs.map((run) => `${run[0]} ${run.length}\n${run.map(entry).join('')}`).join('');
}
