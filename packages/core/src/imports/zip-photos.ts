import type { Readable } from 'node:stream';
import { promisify } from 'node:util';
import { importLimits, uploadLimits } from '@garboard/contract/limits';
import iconv from 'iconv-lite';
import yauzl, { type Entry, type Options, type ZipFile } from 'yauzl';
import { Refusal } from '../problems.ts';

/** A file within a ZIP. */
export interface ZippedFile {
  /** Its path in the ZIP, with `/`. */
  name: string;
  bytes: number;
}

export interface ZipContents {
  photos: ZippedFile[];
  sheets: ZippedFile[];
  /** Neither photos nor sheets, and not what systems leave behind. */
  others: ZippedFile[];
}

const openZip = promisify<string, Options, ZipFile>(yauzl.open);
const photoName = /\.(jpe?g|png|webp|heic|heif)$/i;
/** What systems leave behind in folders: nobody means it. */
const litter = /(^|\/)(__MACOSX\/|\.[^/]*$|thumbs\.db$|desktop\.ini$)/i;
const flagOf = { symlink: 0o120000, kind: 0o170000 };
/** Photos are packed already, so nothing honest unfolds like this. */
const mostUnfolding = 100;

const refuse = (name: string, detail: string) =>
  new Refusal('files-refused', detail, [{ pointer: name, detail }]);

/**
 * Looks at what a ZIP holds, by its directory alone, and refuses one that isn't a plain folder of photos: names that
 * lead elsewhere, links, passwords, more or larger files than a survey has, files that lie in one another.
 *
 * @throws Refusal `files-refused` with a sentence
 */
export async function lookIntoZip(path: string, zipName: string): Promise<ZipContents> {
  const contents: ZipContents = { photos: [], sheets: [], others: [] };
  const seen = new Set<string>();
  const extents: { start: number; end: number }[] = [];
  let total = 0;
  await eachEntry(path, zipName, (entry, name) => {
    checkEntry(entry, name, zipName);
    if (name.endsWith('/')) return;
    if (seen.has(name)) throw refuse(zipName, `The ZIP holds “${shown(name)}” twice. Pack the folder again.`);
    seen.add(name);
    if (seen.size > importLimits.photos + 100) {
      throw refuse(
        zipName,
        `The ZIP holds more than ${importLimits.photos} files. Pack the photos of one survey only.`,
      );
    }
    total += entry.uncompressedSize;
    extents.push({
      start: entry.relativeOffsetOfLocalHeader,
      end: entry.relativeOffsetOfLocalHeader + 30 + entry.fileNameLength + entry.compressedSize,
    });
    if (litter.test(name)) return;
    const file = { name, bytes: entry.uncompressedSize };
    if (photoName.test(name)) contents.photos.push(file);
    else if (/\.(csv|tsv|txt)$/i.test(name)) contents.sheets.push(file);
    else contents.others.push(file);
  });
  if (total > importLimits.unpackedBytes) {
    throw refuse(
      zipName,
      `Unpacked, the ZIP would take ${Math.round(total / 1e9)} GB, more than a survey’s photos do.`,
    );
  }
  extents.sort((a, b) => a.start - b.start);
  if (extents.some(({ start }, at) => start < (extents[at - 1]?.end ?? 0))) {
    throw refuse(
      zipName,
      'Files in this ZIP lie in one another, as no packing program writes them. Pack the folder again.',
    );
  }
  if (contents.photos.length > importLimits.photos) {
    throw refuse(
      zipName,
      `The ZIP holds ${contents.photos.length} photos; at most ${importLimits.photos} come in at once.`,
    );
  }
  return contents;
}

function checkEntry(entry: Entry, name: string, zipName: string): void {
  const problem = yauzl.validateFileName(name);
  if (problem || name.includes('\0')) {
    throw refuse(
      zipName,
      `The ZIP holds “${shown(name)}”, a name that leads out of its folder. Pack the folder of photos again.`,
    );
  }
  // Unix writers keep the kind of a file in the upper half.
  const kind = (entry.externalFileAttributes >>> 16) & flagOf.kind;
  if (kind === flagOf.symlink) {
    throw refuse(zipName, `“${shown(name)}” in the ZIP is a link, not a file. Pack the files themselves.`);
  }
  if (entry.isEncrypted()) {
    throw refuse(zipName, 'The ZIP is locked with a password. Pack the folder again without one.');
  }
  if (![0, 8].includes(entry.compressionMethod)) {
    throw refuse(
      zipName,
      `“${shown(name)}” is packed in a way that isn’t read here. Pack the folder as a plain ZIP.`,
    );
  }
  const { uncompressedSize, compressedSize } = entry;
  if (uncompressedSize > 1_000_000 && uncompressedSize > mostUnfolding * Math.max(1, compressedSize)) {
    throw refuse(
      zipName,
      `“${shown(name)}” would unfold to ${mostUnfolding} times its size and more, as no photo does. It was not unpacked.`,
    );
  }
}

const shown = (name: string) => [...name.replace(/\p{Cc}/gu, '�')].slice(0, 80).join('');

/** Names are UTF-8, as most programs write them whatever they declare; else in the code page that ZIPs began with. */
function nameOf(entry: Entry): string {
  // Not decoded by yauzl, which would end at the first name that leads elsewhere, in words of its own.
  const raw = entry.fileName as unknown as Buffer;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(raw).replaceAll('\\', '/');
  } catch {
    return iconv.decode(raw, 'cp437').replaceAll('\\', '/');
  }
}

async function eachEntry(
  path: string,
  zipName: string,
  visit: (entry: Entry, name: string, zip: ZipFile) => void | Promise<void>,
): Promise<void> {
  let zip: ZipFile;
  try {
    zip = await openZip(path, { lazyEntries: true, autoClose: false, decodeStrings: false });
  } catch (error) {
    throw refuse(zipName, unreadable(error));
  }
  try {
    await new Promise<void>((resolve, reject) => {
      zip.on('error', (error) => reject(refuse(zipName, unreadable(error))));
      zip.on('end', resolve);
      zip.on('entry', (entry: Entry) => {
        Promise.resolve()
          .then(() => visit(entry, nameOf(entry), zip))
          .then(() => zip.readEntry())
          .catch(reject);
      });
      zip.readEntry();
    });
  } finally {
    zip.close();
  }
}

const unreadable = (error: unknown) =>
  `The ZIP can’t be read: ${error instanceof Error ? error.message : 'it is damaged'}. Pack the folder again, as one file.`;

/** Hands out the bytes of some files of a ZIP, one after another, in its order. */
export async function readFromZip(
  path: string,
  zipName: string,
  wanted: ReadonlySet<string>,
  take: (name: string, open: () => Promise<Readable>) => Promise<void>,
): Promise<void> {
  let left = wanted.size;
  if (left === 0) return;
  await eachEntry(path, zipName, async (entry, name, zip) => {
    if (left === 0 || !wanted.has(name)) return;
    left -= 1;
    await take(name, promisify(zip.openReadStream.bind(zip, entry)) as () => Promise<Readable>);
  });
}

/** The whole of a small file of a ZIP. @throws Refusal `files-refused` when it is longer than this, or damaged */
export async function readWhole(
  path: string,
  zipName: string,
  name: string,
  maxBytes: number,
): Promise<Buffer> {
  const parts: Buffer[] = [];
  let bytes = 0;
  await readFromZip(path, zipName, new Set([name]), async (_name, open) => {
    try {
      for await (const part of await open()) {
        bytes += (part as Buffer).length;
        if (bytes > maxBytes) {
          throw refuse(
            zipName,
            `“${shown(name)}” in the ZIP is longer than the ${maxBytes / 1024 ** 2} MB that a sheet may have.`,
          );
        }
        parts.push(part as Buffer);
      }
    } catch (error) {
      throw error instanceof Refusal ? error : refuse(zipName, unreadable(error));
    }
  });
  return Buffer.concat(parts);
}

/** The most that a photo within a ZIP may have. */
export const zippedPhotoBytes = uploadLimits.photoBytes;
