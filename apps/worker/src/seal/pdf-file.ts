import type { FileHandle } from 'node:fs/promises';
import { readFile, writeFile } from 'node:fs/promises';
import { PDFContext, PDFDict, PDFDocument, PDFName, type PDFObject, PDFObjectParser, PDFRef } from 'pdf-lib';

/** The tail of a file in which its last cross-reference table is announced. */
const tailBytes = 2048;
/** One entry of a cross-reference table: ten digits, five digits, a letter and the ends of both. */
const entryBytes = 20;

/** A run of objects in a cross-reference table: the number of the first, how many, and where its entries begin. */
interface Section {
  first: number;
  count: number;
  at: number;
}

/** The PDF is built in a way that can't be added to; it can after it has been written anew. */
export class UnfitPdf extends Error {
  override name = 'UnfitPdf';
}

/**
 * A finished PDF, object by object: only what is asked for is read, so that one of 100 MB takes no more memory than
 * a small one. Understands what Chromium writes: one cross-reference table of the classic form.
 */
export class PdfFile {
  /** What objects are made in and read into. */
  readonly context = PDFContext.create();
  readonly size: number;
  readonly startXref: number;
  readonly trailer: PDFDict;
  /** One more than the highest object number. */
  readonly objectCount: number;
  readonly #file: FileHandle;
  readonly #sections: readonly Section[];

  private constructor(
    file: FileHandle,
    found: { size: number; startXref: number; trailer: PDFDict; sections: Section[] },
  ) {
    this.#file = file;
    this.size = found.size;
    this.startXref = found.startXref;
    this.trailer = found.trailer;
    this.objectCount = Math.max(...found.sections.map(({ first, count }) => first + count));
    this.#sections = found.sections;
  }

  /** @throws UnfitPdf when its cross-references are of another form. */
  static async read(file: FileHandle): Promise<PdfFile> {
    const { size } = await file.stat();
    const tail = (await part(file, Math.max(0, size - tailBytes), tailBytes)).toString('latin1');
    const startXref = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(tail)?.[1] ?? Number.NaN);
    if (!(startXref < size)) throw new UnfitPdf('No cross-reference table is announced at its end.');
    const sections: Section[] = [];
    let trailerAt = startXref;
    for (;;) {
      const head = (await part(file, trailerAt, 64)).toString('latin1');
      const found = (sections.length === 0 ? /^xref\s+(\d+) (\d+)\s*?\r?\n/ : /^(\d+) (\d+)\s*?\r?\n/).exec(
        head,
      );
      if (!found) break;
      const section = { first: Number(found[1]), count: Number(found[2]), at: trailerAt + found[0].length };
      sections.push(section);
      trailerAt = section.at + section.count * entryBytes;
    }
    if (sections.length === 0) throw new UnfitPdf('Its cross-references are not a classic table.');
    const text = await part(file, trailerAt, size - trailerAt);
    const start = text.indexOf('<<');
    if (!/^\s*trailer/.test(text.subarray(0, 20).toString('latin1')) || start < 0) {
      throw new UnfitPdf('Its trailer is not where its cross-reference table ends.');
    }
    const context = PDFContext.create();
    const trailer = PDFObjectParser.forBytes(text.subarray(start), context).parseObject();
    if (
      !(trailer instanceof PDFDict) ||
      trailer.has(PDFName.of('Prev')) ||
      trailer.has(PDFName.of('Encrypt'))
    ) {
      throw new UnfitPdf('It has been changed before, or is encrypted.');
    }
    return new PdfFile(file, { size, startXref, trailer, sections });
  }

  /** The object under this number; one that is not a stream. @throws UnfitPdf when there is none */
  async object(ref: PDFRef): Promise<PDFObject> {
    const { objectNumber } = ref;
    const section = this.#sections.find((s) => objectNumber >= s.first && objectNumber < s.first + s.count);
    if (!section) throw new UnfitPdf(`It has no object ${objectNumber}.`);
    const at = section.at + (objectNumber - section.first) * entryBytes;
    const offset = Number((await part(this.#file, at, 10)).toString('latin1'));
    for (let length = 16_384; ; length *= 4) {
      const bytes = await part(this.#file, offset, length);
      const end = bytes.indexOf('endobj');
      if (end < 0 && bytes.length === length) continue;
      const head = /^\s*(\d+)\s+\d+\s+obj\s*/.exec(bytes.subarray(0, 40).toString('latin1'));
      if (!head || end < 0 || Number(head[1]) !== objectNumber) {
        throw new UnfitPdf(`Its object ${objectNumber} is not where it is said to be.`);
      }
      return PDFObjectParser.forBytes(bytes.subarray(head[0].length, end), this.context).parseObject();
    }
  }

  /** The dictionary that a value is or refers to; undefined for anything else. */
  async dict(value: PDFObject | undefined): Promise<PDFDict | undefined> {
    const found = value instanceof PDFRef ? await this.object(value) : value;
    return found instanceof PDFDict ? found : undefined;
  }
}

/** Writes a PDF anew with a cross-reference table of the classic form; takes a few times its size in memory. */
export async function writeAnew(path: string): Promise<void> {
  const document = await PDFDocument.load(await readFile(path), { updateMetadata: false });
  await writeFile(path, await document.save({ useObjectStreams: false, addDefaultPage: false }));
}

async function part(file: FileHandle, offset: number, length: number): Promise<Buffer> {
  const buffer = Buffer.alloc(length);
  const { bytesRead } = await file.read(buffer, 0, length, offset);
  return buffer.subarray(0, bytesRead);
}
