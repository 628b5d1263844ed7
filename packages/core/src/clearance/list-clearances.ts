import type { Clearance } from '@garboard/contract/clearances';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { loadFinding } from '../findings/load-finding.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { evidenceIsFor } from './load-clearance.ts';
import { presentClearances, withFiles } from './present-clearance.ts';

/** Evidence sent for a finding and what became of it, oldest first. @throws Refusal `not-found`, `not-allowed` */
export async function listClearances(
  ctx: Ctx,
  { findingId, query }: { findingId: string; query: PageInput },
): Promise<Page<Clearance>> {
  const finding = await loadFinding(ctx, findingId);
  authorise(ctx.actor, finding.survey, 'evidence.read', evidenceIsFor);
  const after = decodeCursor(query.cursor, uuidForm);
  const rows = await ctx.tx.clearance.findMany({
    where: { findingId, ...(after === undefined ? {} : { id: { gt: after } }) },
    include: withFiles,
    orderBy: { id: 'asc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.id);
  return { items: await presentClearances(ctx, page.items, finding), next: page.next };
}
