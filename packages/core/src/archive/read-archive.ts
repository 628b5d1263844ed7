import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import {
  type ArchivedFile,
  type ArchiveManifest,
  archivedFile,
  archiveFormat,
  archiveFormatVersion,
  archiveManifest,
} from '@garboard/contract/archive';
import { type Entry, openPromise, type ZipFile } from 'yauzl';
import { z } from 'zod';
import { ArchiveRefused } from './archive-refused.ts';

/** An archive on this machine, open for reading; its entries can be read in any order and again. */
export interface OpenArchive {
  manifest: ArchiveManifest;
  /** Names of all entries. */
  entries: Iterable<string>;
  /** The bytes of an entry. @throws ArchiveRefused naming it when it is missing or can't be unpacked */
  read(entry: string): AsyncGenerator<Buffer>;
  /** The lines of an entry, many at a time, with the number of the first from 1; its bytes measured on the way. */
  lines(entry: string, measure?: Measure): AsyncGenerator<{ first: number; lines: string[] }>;
  /** The lines of files.jsonl. */
  files(): AsyncGenerator<ArchivedFile>;
  close(): void;
}

const again = 'Copy the archive again from where it was made.';

export const damaged = (entry: string, what: string) =>
  new ArchiveRefused(`The archive’s entry ${entry} is damaged: ${what}. ${again}`);

/** Opens an archive and reads its manifest. @throws ArchiveRefused when it is none, damaged, or newer than this code */
export async function openArchive(path: string): Promise<OpenArchive> {
  const zip = await openPromise(path, { lazyEntries: true, autoClose: false }).catch((error: Error) => {
    throw new ArchiveRefused(`${path} can’t be read as a ZIP file (${error.message}). ${again}`);
  });
  try {
    const entries = new Map<string, Entry>();
    try {
      for await (const entry of zip.eachEntry()) entries.set(entry.fileName, entry);
    } catch (error) {
      throw new ArchiveRefused(`The list of what is in ${path} is damaged (${said(error)}). ${again}`);
    }
    return await opened(zip, entries, path);
  } catch (error) {
    zip.close();
    throw error;
  }
}

async function opened(zip: ZipFile, entries: Map<string, Entry>, path: string): Promise<OpenArchive> {
  async function* read(name: string): AsyncGenerator<Buffer> {
    const entry = entries.get(name);
    if (!entry) throw damaged(name, 'it is missing');
    try {
      yield* (await zip.openReadStreamPromise(entry)) as Readable;
    } catch (error) {
      throw damaged(name, said(error));
    }
  }
  if (!entries.has('manifest.json')) {
    throw new ArchiveRefused(`${path} is no firm’s archive, or its end is missing: it has no manifest.json.`);
  }
  const chunks: Buffer[] = [];
  for await (const chunk of read('manifest.json')) chunks.push(chunk);
  const manifest = manifestOf(Buffer.concat(chunks).toString('utf8'), path);
  return {
    manifest,
    entries: entries.keys(),
    read,
    lines: (entry, measure) => linesOf(measure ? measure.of(read(entry)) : read(entry)),
    async *files() {
      const { entry } = manifest.files;
      for await (const { lines, first } of linesOf(read(entry))) {
        for (const [at, line] of lines.entries()) {
          const parsed = archivedFile.safeParse(jsonOf(line));
          if (!parsed.success) throw damaged(entry, `line ${first + at} is not as the schema says`);
          yield parsed.data;
        }
      }
    },
    close: () => zip.close(),
  };
}

function manifestOf(text: string, path: string): ArchiveManifest {
  const raw = jsonOf(text);
  const head = z.object({ format: z.string(), formatVersion: z.int() }).safeParse(raw);
  if (!head.success || head.data.format !== archiveFormat) {
    throw new ArchiveRefused(`${path} is no firm’s archive: its manifest.json is of something else.`);
  }
  if (head.data.formatVersion > archiveFormatVersion) {
    throw new ArchiveRefused(
      `This archive is of format ${head.data.formatVersion}, and this installation reads up to ${archiveFormatVersion}. Bring this installation up to date first.`,
    );
  }
  const parsed = archiveManifest.safeParse(raw);
  if (!parsed.success) throw damaged('manifest.json', 'it is not as the schema says');
  return parsed.data;
}

const batch = 500;

async function* linesOf(chunks: AsyncGenerator<Buffer>): AsyncGenerator<{ first: number; lines: string[] }> {
  let [first, lines] = [1, [] as string[]];
  let rest = '';
  const decoder = new TextDecoder();
  for await (const chunk of chunks) {
    const pieces = (rest + decoder.decode(chunk, { stream: true })).split('\n');
    rest = pieces.pop() ?? '';
    for (const piece of pieces) {
      lines.push(piece);
      if (lines.length < batch) continue;
      yield { first, lines };
      first += lines.length;
      lines = [];
    }
  }
  if (rest) lines.push(rest);
  if (lines.length > 0) yield { first, lines };
}

/** What a text says as JSON; undefined when it is none. */
export function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

export interface Measure {
  of(chunks: AsyncGenerator<Buffer>): AsyncGenerator<Buffer>;
  settle(): { bytes: number; sha256: string };
}

/** Passes bytes on and measures them. */
export function measured(): Measure {
  const hash = createHash('sha256');
  let bytes = 0;
  return {
    async *of(chunks: AsyncGenerator<Buffer>): AsyncGenerator<Buffer> {
      for await (const chunk of chunks) {
        hash.update(chunk);
        bytes += chunk.length;
        yield chunk;
      }
    },
    settle: () => ({ bytes, sha256: hash.digest('hex') }),
  };
}

const said = (error: unknown) => (error instanceof Error ? error.message : String(error));
