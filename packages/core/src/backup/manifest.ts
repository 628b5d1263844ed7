import { sha256 } from '@garboard/contract/common';
import { z } from 'zod';

/** Rises when what lies in a backup's folder changes its meaning. */
export const backupVersion = 1;

const measured = { file: z.string(), bytes: z.int().nonnegative(), sha256 };

/** `manifest.json` of one backup: written last, so a folder without it is an unfinished one. */
export const backupManifest = z.object({
  format: z.literal('garboard backup'),
  version: z.int().positive(),
  /** The moment of which the rows are. */
  at: z.iso.datetime(),
  migrations: z.array(z.string()),
  tables: z.array(
    z.object({ ...measured, name: z.string(), columns: z.array(z.string()), rows: z.int().nonnegative() }),
  ),
  sequences: z.array(z.object({ name: z.string(), value: z.string(), called: z.boolean() })),
  /** The list of the files that rows name: a line each, hash and length. */
  objects: z.object({ ...measured, count: z.int().nonnegative(), objectBytes: z.int().nonnegative() }),
  /** Files that rows named and the store didn't have. */
  missing: z.array(sha256),
  /** Sealed with the installation's secret, so that a restore can tell whether it has the same. */
  sealed: z.base64(),
});
export type BackupManifest = z.output<typeof backupManifest>;

/** A backup can't be made or restored; the message is a sentence that says why and what to do. */
export class BackupRefused extends Error {
  override name = 'BackupRefused';
}

/** What is sealed to know a secret again, and for what. */
export const sealedWord = 'garboard';
export const sealedFor = 'backup';

export const manifestName = 'manifest.json';
/** Files of all backups of a folder lie together, by their hash. */
export const objectsFolder = 'objects';

/** Where an object lies in a folder of backups. */
export const objectPath = (hash: string): string[] => [
  objectsFolder,
  hash.slice(0, 2),
  hash.slice(2, 4),
  hash,
];
