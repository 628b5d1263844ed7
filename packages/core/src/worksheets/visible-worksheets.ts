import { Prisma } from '@garboard/db/database';
import type { Actor } from '../access/actor.ts';
import { isStaff, may, type Standing, seesIssued } from '../access/policy.ts';
import { ownPartiesSql } from '../access/scopes.ts';

/** Which of a survey's worksheets the actor may see; `none` when there are none for them. */
export type WorksheetView = 'all' | 'issued' | 'of-findings' | 'none';

/**
 * Staff see the working copies. Who may read the report sees what it prints; who sees only findings (the yard) sees
 * the measurements that belong to them, and so neither a valuation nor anything else of the record.
 */
export function worksheetView(actor: Actor, standing: Standing): WorksheetView {
  if (isStaff(actor, standing)) return 'all';
  if (may(actor, standing, 'report.read')) return 'issued';
  return seesIssued(actor, standing) ? 'of-findings' : 'none';
}

/** The same as a condition on rows of `worksheets w`; a yard's are those of the findings that it puts right. */
export function viewCondition(actor: Actor, view: WorksheetView): Prisma.Sql {
  if (view === 'all') return Prisma.sql`true`;
  if (view === 'issued') return Prisma.sql`w.issued IS NOT NULL`;
  if (view === 'none') return Prisma.sql`false`;
  return Prisma.sql`(w.issued->>'findingId')::uuid IN (
    SELECT y.finding_id FROM finding_yards y JOIN parties p ON p.id = y.party_id
     WHERE ${ownPartiesSql(actor)} AND p.released AND NOT p.held)`;
}
