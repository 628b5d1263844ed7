import { z } from 'zod';
import { type ArchiveTable, archiveTables } from './archive-tables.ts';
import { id, instant, sha256 } from './common.ts';

export const archiveFormat = 'garboard firm archive';
/** Rises when a column or an entry changes its meaning or goes; columns that are added don't raise it. */
export const archiveFormatVersion = 1;
export const archiveSchemaPath = '/v1/schemas/firm-archive.json';

const entry = {
  entry: z.string().meta({ description: 'Its name in the ZIP file' }),
  bytes: z.int().nonnegative(),
  sha256,
};

/** `manifest.json`, the archive's last entry: it names all others, files by way of `files.jsonl`. */
export const archiveManifest = z.object({
  format: z.literal(archiveFormat),
  formatVersion: z.int().positive(),
  madeAt: instant,
  firm: z.object({ id, name: z.string() }),
  tables: z
    .array(
      z.object({
        ...entry,
        table: z.string(),
        rows: z.int().nonnegative(),
        columns: z.array(z.string()).meta({ description: 'Those that the rows have' }),
      }),
    )
    .meta({ description: 'JSON Lines, one row a line, in the order in which they can be brought in' }),
  files: z
    .object({ ...entry, files: z.int().nonnegative(), fileBytes: z.int().nonnegative() })
    .meta({ description: 'The list of photos, evidence, documents and pictures: files.jsonl' }),
  record: z
    .object({ entries: z.int().nonnegative(), head: z.string().nullable() })
    .meta({ description: 'How long the firm’s record is and the hash of its last entry' }),
  signing: z
    .object({
      subject: z.string(),
      fingerprint: sha256,
      validUntil: instant,
      certificates: z.array(z.base64()).meta({ description: 'DER, base64; the key’s own first' }),
    })
    .nullable()
    .meta({
      description: 'The certificate that signed the firm’s documents; its private key never leaves',
    }),
  leftOut: z
    .array(z.object({ table: z.string(), reason: z.string() }))
    .meta({ description: 'What isn’t in the archive and must be set up anew' }),
});
export type ArchiveManifest = z.output<typeof archiveManifest>;

/** A line of `files.jsonl`. */
export const archivedFile = z.object({
  ...entry,
  kind: z.enum(['photo', 'evidence', 'document', 'picture']).meta({
    description: 'picture: a photo as it is shown or printed, with its marks, in one of its sizes',
  }),
});
export type ArchivedFile = z.output<typeof archivedFile>;

const kinds: Record<string, z.ZodType> = {
  uuid: z.guid(),
  text: z.string(),
  int: z.int(),
  float: z.number(),
  bool: z.boolean(),
  date: z.iso.date(),
  instant: z.iso.datetime({ offset: true }),
  bytes: z.string().regex(/^\\x([0-9a-f]{2})*$/),
  json: z.unknown(),
  'text[]': z.array(z.string()),
  'uuid[]': z.array(z.guid()),
};

/** A table's columns, with the kind of each. */
export function columnsOf({ columns }: ArchiveTable): { name: string; kind: string; nullable: boolean }[] {
  return columns.split(',').map((column) => {
    const [name = '', kind = ''] = column.trim().split(' ');
    return { name, kind: kind.replace('?', ''), nullable: kind.endsWith('?') };
  });
}

/** What a row of a table must be; with the names given, of these columns alone, as older archives may have fewer. */
export function archivedRow(table: ArchiveTable, only?: readonly string[]): z.ZodObject {
  const columns = columnsOf(table).filter(({ name }) => !only || only.includes(name));
  return z.strictObject(
    Object.fromEntries(
      columns.map(({ name, kind, nullable }) => {
        const type = kinds[kind];
        if (!type) throw new Error(`${table.name}.${name} is of no kind that we know: ${kind}`);
        return [name, nullable ? type.nullable() : type];
      }),
    ),
  );
}

/**
 * The JSON Schema (draft 2020-12) of an archive's entries: the manifest, a line of files.jsonl, and, by table, a line of
 * `tables/<table>.jsonl`.
 *
 * @param publicUrl address of the installation, without a slash at the end.
 */
export function archiveSchema(publicUrl: string): Record<string, unknown> {
  const part = (type: z.ZodType) => {
    const { $schema: _, ...schema } = z.toJSONSchema(type, { io: 'input', target: 'draft-2020-12' });
    return schema;
  };
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: `${publicUrl}${archiveSchemaPath}`,
    title: 'A survey firm’s archive',
    description:
      'What the entries of the ZIP file hold. Times are UTC, sizes metres and kilograms, money minor units of its ' +
      'currency. Columns may be added; `formatVersion` rises when one changes its meaning.',
    $ref: '#/$defs/manifest',
    $defs: {
      manifest: part(archiveManifest),
      file: part(archivedFile),
      tables: {
        $defs: Object.fromEntries(archiveTables.map((table) => [table.name, part(archivedRow(table))])),
      },
    },
  };
}

/** One making of an archive, as the firm's principal sees it. */
export const firmExport = z
  .object({
    id,
    state: z
      .enum(['queued', 'making', 'ready', 'failed', 'removed'])
      .meta({ description: 'removed: it was kept for its days, or another was asked for' }),
    progress: z.int().min(0).max(100),
    stage: z.string().meta({ description: 'What is being done, in words' }),
    problem: z.string().nullable().meta({ description: 'Why it failed' }),
    bytes: z.int().nullable(),
    sha256: sha256.nullable(),
    askedBy: z.string(),
    askedAt: instant,
    readyAt: instant.nullable(),
    keptUntil: instant.nullable().meta({ description: 'When the archive is removed from the server' }),
  })
  .meta({ id: 'FirmExport' });
export type FirmExport = z.output<typeof firmExport>;
