import type { LibraryPhoto, photoLibraryQuery } from '@garboard/contract/photo-library';
import { Prisma } from '@garboard/db/database';
import { type Purpose, type System, systemLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { staffFirmIds } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';
import { notAllowed } from '../problems.ts';
import { orderKeyForm } from './list-photos.ts';
import { presentPicture } from './present-photo.ts';

const mostWords = 6;

/** Systems in whose label or key this word occurs. */
const systemsNamed = (word: string): string[] =>
  Object.entries(systemLabels)
    .filter(([key, label]) => `${key} ${label}`.toLowerCase().includes(word.toLowerCase()))
    .map(([key]) => key);

/** The day after, so that a whole day can be asked for. */
const dayAfter = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);

function conditions(
  firmIds: string[],
  query: z.output<typeof photoLibraryQuery>,
  before: string | undefined,
) {
  const firms = Prisma.sql`ANY (${firmIds}::uuid[])`;
  const all = [Prisma.sql`p.firm_id = ${firms}`];
  // The order key begins with the time, in UTC.
  if (before !== undefined) all.push(Prisma.sql`p.order_key < ${before}`);
  if (query.from) all.push(Prisma.sql`p.order_key >= ${query.from}`);
  if (query.to) all.push(Prisma.sql`p.order_key < ${dayAfter(query.to)}`);
  if (query.hullMaterial) {
    all.push(Prisma.sql`p.survey_id IN (
      SELECT s.id FROM surveys s JOIN vessels v ON v.id = s.vessel_id
      WHERE v.hull_material = ${query.hullMaterial} AND v.firm_id = ${firms})`);
  }
  if (query.system) {
    all.push(Prisma.sql`p.id IN (
      SELECT fp.photo_id FROM findings f JOIN finding_photos fp ON fp.finding_id = f.id
      WHERE f.system = ${query.system} AND f.firm_id = ${firms})`);
  }
  const words = (query.q ?? '').normalize('NFC').split(/\s+/).filter(Boolean);
  for (const word of words.slice(0, mostWords)) {
    const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
    all.push(
      Prisma.sql`p.id IN (SELECT garboard_photos_matching(${pattern}, ${systemsNamed(word)}::text[]))`,
    );
  }
  return Prisma.join(all, ' AND ');
}

/**
 * Photos of all surveys of the actor's own firms, latest first. Each word of `q` must occur in the caption, in the
 * title or system of a finding that shows the photo, or in the boat's name.
 *
 * @throws Refusal `not-allowed` for people who work for no firm
 */
export async function listPhotoLibrary(
  ctx: Ctx,
  query: z.output<typeof photoLibraryQuery>,
): Promise<Page<LibraryPhoto>> {
  const firmIds = staffFirmIds(ctx.actor);
  if (firmIds.length === 0) throw notAllowed('The photo library is for staff of a survey firm.');
  const before = decodeCursor(query.cursor, orderKeyForm);
  const found = await ctx.tx.$queryRaw<{ id: string }[]>`
    SELECT p.id FROM photos p WHERE ${conditions(firmIds, query, before)}
    ORDER BY p.order_key DESC LIMIT ${query.limit + 1}`;
  const rows = await ctx.tx.photo.findMany({
    where: { id: { in: found.map((row) => row.id) } },
    include: {
      survey: { include: { vessel: true } },
      findings: { include: { finding: { select: { id: true, number: true, title: true, system: true } } } },
    },
    orderBy: { orderKey: 'desc' },
  });
  const page = cutPage(rows, query.limit, (row) => row.orderKey);
  const items = page.items.map((row): LibraryPhoto => {
    const { vessel, id, number, purpose } = row.survey;
    return {
      ...presentPicture(row),
      vessel: { id: vessel.id, name: vessel.name, hullMaterial: vessel.hullMaterial },
      survey: { id, number, purpose: purpose as Purpose },
      findings: row.findings
        .map(({ finding }) => ({ ...finding, system: finding.system as System }))
        .sort((a, b) => a.number - b.number),
    };
  });
  return { items, next: page.next };
}
