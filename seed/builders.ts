import { Readable } from 'node:stream';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { keepKey } from '@garboard/core/signing/keep-key';
import type { KeyPair } from '@garboard/core/signing/open-p12';
import { type Database, inTransaction, type Tx } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { sealerOf } from '@garboard/platform/sealing';
import type { FirmRole } from '@garboard/trade/vocabulary';
import sharp from 'sharp';
import { selfMadeKey } from './self-made-key.ts';

/** A person with a live session: `token` goes into `Authorization: Bearer`. */
export interface Signed {
  id: string;
  name: string;
  email: string;
  token: string;
}

/** The secret under which the firms of tests keep their keys; a server or worker of a test is given it. */
export const testSecret = 'a secret for tests and for nothing else';
const testSealer = sealerOf(testSecret);

let testPair: Promise<KeyPair> | undefined;

/** Gives a firm a signing key, so that it can issue documents. All firms of a run share one, made at the first. */
export async function buildSigningKey(tx: Tx, firmId: string): Promise<void> {
  testPair ??= selfMadeKey({
    firmName: 'Builders Survey',
    country: 'NZ',
    validFrom: new Date('2000-01-01'),
    validUntil: new Date('2049-12-31'),
    kind: 'ec',
  });
  const pair = await testPair;
  const clock = () => new Date();
  await keepKey({ tx, clock }, { firmId, pair, sealer: testSealer, addedBy: 'Builders' });
}

let serial = 0;
const next = () => ++serial;

/** A person who is signed in. */
export async function buildPerson(
  db: Database,
  fields: { name?: string; email?: string } = {},
): Promise<Signed> {
  const n = next();
  const id = newId();
  const name = fields.name ?? `Person ${n}`;
  const email = fields.email ?? `person${n}-${id.slice(-6)}@builders.example`;
  const token = newToken();
  await inTransaction(db, [], async (tx) => {
    await tx.person.create({ data: { id, name, email } });
    const expiresAt = new Date(Date.now() + 3_600_000);
    await tx.session.create({ data: { id: newId(), personId: id, tokenHash: hashToken(token), expiresAt } });
  });
  return { id, name, email, token };
}

/** A survey firm with one person in each role asked for. */
export async function buildFirm<const R extends FirmRole>(
  db: Database,
  roles: readonly R[],
): Promise<{ id: string; name: string } & Record<R, Signed>> {
  const id = newId();
  // Of one length, so that names sort as they were made.
  const name = `Firm ${String(next()).padStart(5, '0')}`;
  const staff: Partial<Record<R, Signed>> = {};
  for (const role of roles) staff[role] = await buildPerson(db, { name: `The ${role} of ${name}` });
  await inTransaction(db, [id], async (tx) => {
    await tx.firm.create({ data: { id, name } });
    await buildSigningKey(tx, id);
    for (const role of roles) {
      const personId = staff[role]?.id ?? '';
      await tx.firmMember.create({ data: { id: newId(), firmId: id, personId, role } });
    }
  });
  return { ...(staff as Record<R, Signed>), id, name };
}

/** A real photograph-like JPEG with EXIF date and orientation; another `seed`, other bytes. */
export async function buildJpeg(
  seed: number,
  options: { width?: number; height?: number; takenAt?: string; orientation?: number } = {},
): Promise<Buffer> {
  const { width = 1200, height = 900, takenAt = '2026:05:04 10:20:30', orientation = 1 } = options;
  const shapes = Array.from({ length: 12 }, (_, i) => {
    const v = (seed * 7919 + i * 104_729) % 360;
    return `<circle cx="${(v * 37) % width}" cy="${(v * 53) % height}" r="${40 + (v % 160)}" fill="hsl(${v} 45% 50%)"/>`;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">
    <rect width="100%" height="100%" fill="hsl(${seed % 360} 30% 70%)"/>${shapes.join('')}</svg>`;
  return sharp(Buffer.from(svg))
    .jpeg({ quality: 82 })
    .withMetadata({ orientation })
    .withExifMerge({ IFD2: { DateTimeOriginal: takenAt, OffsetTimeOriginal: '+00:00' } })
    .toBuffer();
}

/** A stream over bytes, as a file arrives. */
export const streamOf = (bytes: Uint8Array): Readable => Readable.from([Buffer.from(bytes)]);
