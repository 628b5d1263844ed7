import { columnsOf } from '@garboard/contract/archive';
import type { ArchiveTable } from '@garboard/contract/archive-tables';
import { Prisma, type Tx } from '@garboard/db/database';
import { ArchiveRefused } from './archive-refused.ts';
import { personColumns } from './archive-rows.ts';
import { tablesOf } from './check-archive.ts';
import type { OpenArchive } from './read-archive.ts';

/** Which table's rows a column names, where it isn't for the database to know; the rest is told by foreign keys. */
const names: Record<string, string> = {
  survey_id: 'surveys',
  finding_id: 'findings',
  photo_id: 'photos',
  lead_photo_id: 'photos',
  before_photo_id: 'photos',
  vessel_id: 'vessels',
  party_id: 'parties',
  report_id: 'reports',
  clearance_id: 'clearances',
  re_inspection_id: 're_inspections',
  quotation_id: 'quotations',
  invoice_id: 'invoices',
  visit_id: 'visits',
  event_id: 'events',
};
const quoted = (name: string) => `"${name}"`;
const raw = Prisma.raw;

/**
 * Brings an archive's rows into the database, in the transaction given, with its owner's rights. Who is known here by
 * their e-mail address stays who they are here; every other id is kept.
 *
 * @returns how many rows, and how many people were known
 * @throws ArchiveRefused when the firm is here already, or a row names another firm's
 */
export async function bringInRows(tx: Tx, archive: OpenArchive): Promise<{ rows: number; known: number }> {
  const { firm } = archive.manifest;
  await tx.$executeRaw`SET LOCAL timezone = 'UTC'`;
  const [there] = await tx.$queryRaw<object[]>`
    SELECT 1 FROM firms WHERE id = ${firm.id}::uuid UNION ALL
    SELECT 1 FROM event_heads WHERE firm_id = ${firm.id}::uuid LIMIT 1`;
  if (there) {
    throw new ArchiveRefused(
      `${firm.name} (${firm.id}) is in this installation already. An archive is brought into one that doesn’t have the firm.`,
    );
  }
  await tx.$executeRaw`CREATE TEMP TABLE brought (line json NOT NULL) ON COMMIT DROP`;
  await tx.$executeRaw`CREATE TEMP TABLE brought_people (former uuid PRIMARY KEY, here uuid NOT NULL) ON COMMIT DROP`;
  let rows = 0;
  for (const { table, columns, entry } of tablesOf(archive)) {
    await tx.$executeRaw`TRUNCATE brought`;
    for await (const { lines } of archive.lines(entry)) {
      await tx.$executeRaw`INSERT INTO brought (line) SELECT unnest(${lines}::text[])::json`;
      rows += lines.length;
    }
    if (table.name === 'people') await matchPeople(tx);
    await tx.$executeRaw`${raw(insertOf(table, columns))}`;
  }
  const [{ known } = { known: 0 }] = await tx.$queryRaw<{ known: number }[]>`
    SELECT count(*)::int AS known FROM brought_people`;
  // Who stands in the record under another id: the record keeps it, as it is in its hashes.
  await tx.$executeRaw`
    INSERT INTO former_ids (firm_id, former_id, person_id)
    SELECT ${firm.id}::uuid, former, here FROM brought_people WHERE former <> here ON CONFLICT DO NOTHING`;
  // One number of a known defect, one text: ours moves above a firm's words of the same number.
  await tx.$executeRaw`
    UPDATE catalogue_entries AS c SET version = (
      SELECT max(f.version) + 1 FROM firm_catalogue_entries AS f WHERE f.key = c.key)
    WHERE EXISTS (SELECT FROM firm_catalogue_entries AS f
      WHERE f.firm_id = ${firm.id}::uuid AND f.key = c.key AND f.version = c.version)`;
  // What waits for the end of the transaction, such as the record's chain, is done now, to be looked at.
  await tx.$executeRaw`SET CONSTRAINTS ALL IMMEDIATE`;
  await refuseForeign(tx, archive);
  return { rows, known };
}

/** Notes who of the archive is here already: by their address, else by an id that came here before. */
async function matchPeople(tx: Tx): Promise<void> {
  await tx.$executeRaw`
    INSERT INTO brought_people (former, here)
    SELECT (line ->> 'id')::uuid, coalesce(same.id, known.id)
    FROM brought
    LEFT JOIN people AS same ON same.email = line ->> 'email'
    LEFT JOIN people AS known ON known.id = (line ->> 'id')::uuid
    WHERE coalesce(same.id, known.id) IS NOT NULL`;
}

function insertOf(table: ArchiveTable, columns: string[]): string {
  const people = personColumns(table.name);
  const value = (name: string) =>
    people.includes(name)
      ? `coalesce((SELECT here FROM brought_people AS p WHERE p.former = t.${quoted(name)}), t.${quoted(name)})`
      : `t.${quoted(name)}`;
  const of = columnsOf(table)
    .map(({ name }) => name)
    .filter((name) => columns.includes(name));
  const unknown =
    table.name === 'people' ? 'WHERE NOT EXISTS (SELECT FROM brought_people AS p WHERE p.former = t.id)' : '';
  return `INSERT INTO ${quoted(table.name)} (${of.map(quoted).join(', ')})
    SELECT ${of.map(value).join(', ')}
    FROM brought CROSS JOIN LATERAL json_populate_record(NULL::${quoted(table.name)}, line) AS t ${unknown}`;
}

/** Nothing that was brought in may name something of another firm's: who is party to it would see that. */
async function refuseForeign(tx: Tx, archive: OpenArchive): Promise<void> {
  const { firm } = archive.manifest;
  for (const { table, columns, entry } of tablesOf(archive)) {
    for (const [column, of] of Object.entries(names)) {
      if (!columns.includes(column)) continue;
      const [foreign] = await tx.$queryRaw<object[]>`
        SELECT 1 FROM ${raw(quoted(table.name))} AS t JOIN ${raw(quoted(of))} AS o ON o.id = t.${raw(quoted(column))}
        WHERE t.firm_id = ${firm.id}::uuid AND o.firm_id <> ${firm.id}::uuid LIMIT 1`;
      if (foreign) {
        throw new ArchiveRefused(
          `A row of ${entry} names, as its ${column}, something of another firm’s here. Nothing was brought in.`,
        );
      }
    }
  }
}
