import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** A HEIC file as phones write them, made from a JPEG with Debian's `heif-enc`; Exif data comes along. */
export async function encodeHeic(jpeg: Buffer, quality = 70): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), 'garboard-heic-'));
  try {
    const [from, to] = [join(folder, 'a.jpg'), join(folder, 'a.heic')];
    await writeFile(from, jpeg);
    await run('heif-enc', ['-q', String(quality), '-o', to, from]).catch((error: NodeJS.ErrnoException) => {
      const missing = error.code === 'ENOENT';
      throw missing
        ? new Error('These tests need heif-enc to make HEIC files: apt-get install libheif-examples')
        : error;
    });
    return await readFile(to);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const box = (type: string, ...parts: Buffer[]): Buffer => {
  const body = Buffer.concat(parts);
  const head = Buffer.alloc(8);
  head.writeUInt32BE(body.length + 8);
  head.write(type, 4, 'latin1');
  return Buffer.concat([head, body]);
};

function* boxesOf(bytes: Buffer, from = 0): Generator<{ type: string; at: number; body: Buffer }> {
  for (let at = from; at < bytes.length; at += bytes.readUInt32BE(at)) {
    const end = at + bytes.readUInt32BE(at);
    yield { type: bytes.toString('latin1', at + 4, at + 8), at, body: bytes.subarray(at + 8, end) };
  }
}

/**
 * The same HEIC file with a property of its main picture added, as cameras add `irot`: a new description is put at the
 * end and the old one declared free, so that no place within the file changes.
 */
export function withProperty(heic: Buffer, type: string, body: Buffer): Buffer {
  const out = Buffer.from(heic);
  const meta = [...boxesOf(heic)].find((b) => b.type === 'meta');
  if (!meta) throw new Error('No meta box.');
  out.write('free', meta.at + 4, 'latin1');
  const inner = [...boxesOf(meta.body, 4)].map((b) => {
    if (b.type !== 'iprp') return box(b.type, b.body);
    const [ipco, ipma] = ['ipco', 'ipma'].map((t) => [...boxesOf(b.body)].find((c) => c.type === t)?.body);
    if (!ipco || !ipma) throw new Error('No properties.');
    const added = [...boxesOf(ipco)].length + 1;
    // One short index a link, item 1 first: as heif-enc writes it.
    if (ipma.readUInt32BE(0) !== 0 || ipma.readUInt16BE(8) !== 1)
      throw new Error('Not as heif-enc writes it.');
    const links = ipma.readUInt8(10);
    const more = Buffer.concat([
      ipma.subarray(0, 10),
      Buffer.from([links + 1]),
      ipma.subarray(11, 11 + links),
      Buffer.from([0x80 | added]),
      ipma.subarray(11 + links),
    ]);
    return box('iprp', box('ipco', ipco, box(type, body)), box('ipma', more));
  });
  return Buffer.concat([out, box('meta', meta.body.subarray(0, 4), ...inner)]);
}

/** Quarter turns anticlockwise, as the box `irot` tells them. */
export const turnedBy = (heic: Buffer, quarters: number): Buffer =>
  withProperty(heic, 'irot', Buffer.from([quarters]));
