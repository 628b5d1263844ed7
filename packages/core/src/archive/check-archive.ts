import { archivedRow, columnsOf } from '@garboard/contract/archive';
import { type ArchiveTable, archiveTables } from '@garboard/contract/archive-tables';
import { ArchiveRefused } from './archive-refused.ts';
import { damaged, jsonOf, measured, type OpenArchive } from './read-archive.ts';

/**
 * Looks at everything in an archive before anything of it is brought in: that each entry is there, of the length and
 * SHA-256 that the manifest says, each row as the schema says and of the one firm, and nothing besides.
 *
 * @throws ArchiveRefused naming the first entry at fault
 */
export async function checkArchive(archive: OpenArchive): Promise<void> {
  const { manifest } = archive;
  const known = new Set(['manifest.json', manifest.files.entry]);
  tablesOf(archive);
  for (const written of manifest.tables) {
    known.add(written.entry);
    const table = archiveTables.find(({ name }) => name === written.table) as ArchiveTable;
    const rows = await checkRows(archive, table, written);
    checkMeasure(written.entry, { ...written, count: written.rows }, rows);
    if (table.name === 'firms' && rows.count !== 1) throw damaged(written.entry, 'it must hold one firm');
  }
  await checkFiles(archive, known);
  for (const entry of archive.entries) {
    // Some programs that pack an archive anew add its folders.
    if (!known.has(entry) && !entry.endsWith('/')) {
      throw new ArchiveRefused(
        `The archive holds ${entry}, which its manifest doesn’t name. Use the archive as it was made.`,
      );
    }
  }
}

/** The tables of the archive as this code knows them, in order. @throws ArchiveRefused when one isn't known */
export function tablesOf({
  manifest,
}: OpenArchive): { table: ArchiveTable; columns: string[]; entry: string }[] {
  const newer = (what: string) =>
    new ArchiveRefused(
      `The archive has ${what}, which this installation doesn’t know: it was made by a newer version. Bring this installation up to date first.`,
    );
  for (const { table, columns } of manifest.tables) {
    const ours = archiveTables.find(({ name }) => name === table);
    if (!ours) throw newer(`a table ${table}`);
    const names = columnsOf(ours).map(({ name }) => name);
    const odd = columns.find((column) => !names.includes(column));
    if (odd) throw newer(`a column ${odd} of ${table}`);
  }
  return archiveTables.flatMap((table) => {
    const written = manifest.tables.find((one) => one.table === table.name);
    return written ? [{ table, columns: written.columns, entry: written.entry }] : [];
  });
}

async function checkRows(
  archive: OpenArchive,
  table: ArchiveTable,
  { entry, columns }: { entry: string; columns: string[] },
) {
  const schema = archivedRow(table, columns);
  const firmId = archive.manifest.firm.id;
  const measure = measured();
  let count = 0;
  for await (const { first, lines } of archive.lines(entry, measure)) {
    for (const [at, line] of lines.entries()) {
      count += 1;
      const row = schema.safeParse(jsonOf(line));
      const where = `line ${first + at} `;
      if (!row.success) {
        const [issue] = row.error.issues;
        throw damaged(
          entry,
          `${where}is not as the schema says (${issue?.path.join('.')}: ${issue?.message})`,
        );
      }
      const owner = table.name === 'firms' ? row.data.id : row.data.firm_id;
      if (table.name !== 'people' && owner !== firmId) throw damaged(entry, `${where}is another firm’s`);
    }
  }
  return { ...measure.settle(), count };
}

async function checkFiles(archive: OpenArchive, known: Set<string>): Promise<void> {
  const { files } = archive.manifest;
  let [count, fileBytes] = [0, 0];
  for await (const file of archive.files()) {
    known.add(file.entry);
    count += 1;
    const measure = measured();
    for await (const chunk of measure.of(archive.read(file.entry))) fileBytes += chunk.length;
    checkMeasure(file.entry, { ...file, count: 0 }, { ...measure.settle(), count: 0 });
  }
  const measure = measured();
  for await (const _ of measure.of(archive.read(files.entry)));
  checkMeasure(files.entry, { ...files, count: files.files }, { ...measure.settle(), count });
  if (fileBytes !== files.fileBytes) throw damaged(files.entry, 'the lengths of its files don’t add up');
}

interface Found {
  bytes: number;
  sha256: string;
  count: number;
}

function checkMeasure(entry: string, said: Found, found: Found): void {
  if (found.bytes !== said.bytes) throw damaged(entry, `it has ${found.bytes} bytes and not ${said.bytes}`);
  if (found.sha256 !== said.sha256) throw damaged(entry, 'its SHA-256 is not the one in the manifest');
  if (found.count !== said.count) throw damaged(entry, `it has ${found.count} lines and not ${said.count}`);
}
