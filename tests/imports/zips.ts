import { crc32, deflateRawSync } from 'node:zlib';
import yazl from 'yazl';

/** A plain ZIP as a packing program writes it. */
export async function packed(files: Record<string, Buffer | string>): Promise<Buffer> {
  const zip = new yazl.ZipFile();
  for (const [name, bytes] of Object.entries(files)) zip.addBuffer(Buffer.from(bytes), name);
  zip.end();
  const parts: Buffer[] = [];
  for await (const part of zip.outputStream) parts.push(part as Buffer);
  return Buffer.concat(parts);
}

export interface OddEntry {
  name: string | Buffer;
  bytes?: Buffer;
  /** Unix mode, as in the upper half of the external attributes. */
  mode?: number;
  flags?: number;
  /** Claimed instead of the true length. */
  claims?: number;
  /** Lies where this entry, by its place, lies. */
  lieAt?: number;
}

/** A ZIP written byte by byte, so that it can hold what no packing program writes. */
export function oddZip(entries: readonly OddEntry[]): Buffer {
  const locals: Buffer[] = [];
  const central: Buffer[] = [];
  const offsets: number[] = [];
  let at = 0;
  for (const { name, bytes = Buffer.from('x'), mode = 0o100644, flags = 0x800, claims, lieAt } of entries) {
    const nameBytes = Buffer.from(name);
    const squeezed = deflateRawSync(bytes);
    const size = claims ?? bytes.length;
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(20, 4);
    local.writeUInt16LE(flags, 6);
    local.writeUInt16LE(8, 8);
    local.writeUInt32LE(crc32(bytes), 14);
    local.writeUInt32LE(squeezed.length, 18);
    local.writeUInt32LE(size, 22);
    local.writeUInt16LE(nameBytes.length, 26);
    const head = Buffer.alloc(46);
    head.writeUInt32LE(0x02014b50, 0);
    head.writeUInt16LE((3 << 8) | 20, 4);
    head.writeUInt16LE(20, 6);
    head.writeUInt16LE(flags, 8);
    head.writeUInt16LE(8, 10);
    head.writeUInt32LE(crc32(bytes), 16);
    head.writeUInt32LE(squeezed.length, 20);
    head.writeUInt32LE(size, 24);
    head.writeUInt16LE(nameBytes.length, 28);
    head.writeUInt32LE((mode << 16) >>> 0, 38);
    const offset = lieAt === undefined ? at : (offsets[lieAt] ?? 0);
    head.writeUInt32LE(offset, 42);
    central.push(head, nameBytes);
    offsets.push(offset);
    if (lieAt === undefined) {
      locals.push(local, nameBytes, squeezed);
      at += 30 + nameBytes.length + squeezed.length;
    }
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...locals, directory, end]);
}
