import type { CatalogueOrigin } from '@garboard/contract/catalogue';
import type { Prisma } from '@garboard/db/database';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';

type OurRow = Prisma.CatalogueEntryGetPayload<object>;
type FirmRow = Prisma.FirmCatalogueEntryGetPayload<object>;

/** What ours and a firm's have in common. */
export type EntryWords = Pick<OurRow & FirmRow, keyof OurRow & keyof FirmRow>;

/** An entry as a firm reads it. */
export interface ShownEntry {
  words: EntryWords;
  origin: CatalogueOrigin;
  /** Of ours, also beside the firm's words. */
  diagram: string | null;
  /** The firm's row, when it is the firm's words that are read. */
  firmRow: FirmRow | null;
}

export const keyForm = /^[a-z0-9]+(-[a-z0-9]+)+$/;

/** The entry of a key as the firm reads it, or null. */
export async function shownEntry(ctx: Ctx, firmId: string, key: string): Promise<ShownEntry | null> {
  if (!keyForm.test(key)) return null;
  const ours = await ctx.tx.catalogueEntry.findUnique({ where: { key } });
  const firmRow = await ctx.tx.firmCatalogueEntry.findFirst({ where: { firmId, key, current: true } });
  const diagram = ours?.diagram ?? null;
  if (firmRow) return { words: firmRow, origin: ours ? 'firm-wording' : 'firm', diagram, firmRow };
  return ours && { words: ours, origin: 'garboard', diagram, firmRow: null };
}

/** @throws Refusal `not-found` */
export async function loadEntry(ctx: Ctx, firmId: string, key: string): Promise<ShownEntry> {
  const entry = await shownEntry(ctx, firmId, key);
  if (!entry) throw notFound('entry in the catalogue');
  return entry;
}
