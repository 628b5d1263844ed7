import type { Extension } from '@garboard/contract/extensions';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { loadFinding } from '../findings/load-finding.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { presentExtension } from './extension-rows.ts';
import { evidenceIsFor } from './load-clearance.ts';

/** More time given for a finding, oldest first. @throws Refusal `not-found`, `not-allowed` */
export async function listExtensions(
  ctx: Ctx,
  { findingId, query }: { findingId: string; query: PageInput },
): Promise<Page<Extension>> {
  const { survey } = await loadFinding(ctx, findingId);
  authorise(ctx.actor, survey, 'evidence.read', evidenceIsFor);
  const after = decodeCursor(query.cursor, uuidForm);
  const rows = await ctx.tx.dueExtension.findMany({
    where: { findingId, ...(after === undefined ? {} : { id: { gt: after } }) },
    orderBy: { id: 'asc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.id);
  return { items: page.items.map(presentExtension), next: page.next };
}
