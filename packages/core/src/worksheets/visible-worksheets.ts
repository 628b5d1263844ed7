import { Prisma } from '@garboard/db/database';
import type { Actor } from '../access/actor.ts';
import { isStaff, may, type Standing } from '../access/policy.ts';

/** Which of a survey's worksheets the actor may see; `none` when there are none for them. */
export type WorksheetView = 'all' | 'issued' | 'of-findings' | 'none';

/**
 * Staff see the working copies. Who may read the report sees what it prints; who sees only findings (the yard) sees
 * the measurements that belong to them, and so neither a valuation nor anything else of the record.
 */
export function worksheetView(actor: Actor, standing: Standing): WorksheetView {
  if (isStaff(actor, standing)) return 'all';
  if (may(actor, standing, 'report.read')) return 'issued';
  return standing.parties.some((p) => p.released) ? 'of-findings' : 'none';
}

/** The same as a condition on rows of `worksheets w`. */
export const viewCondition: Record<WorksheetView, Prisma.Sql> = {
  all: Prisma.sql`true`,
  issued: Prisma.sql`w.issued IS NOT NULL`,
  'of-findings': Prisma.sql`w.issued->>'findingId' IS NOT NULL`,
  none: Prisma.sql`false`,
};
