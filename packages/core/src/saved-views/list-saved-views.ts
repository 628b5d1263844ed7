import type { SavedView, savedViewQuery } from '@garboard/contract/saved-views';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import type { Page } from '../paging.ts';
import { presentView, viewer } from './own-view.ts';

/** The person's views by name; there are few, so they come as one page. */
export async function listSavedViews(
  ctx: Ctx,
  query: z.output<typeof savedViewQuery>,
): Promise<Page<SavedView>> {
  const rows = await ctx.tx.savedView.findMany({
    where: { personId: viewer(ctx.actor), ...(query.page ? { page: query.page } : {}) },
    orderBy: [{ page: 'asc' }, { name: 'asc' }],
  });
  return { items: rows.map(presentView), next: null };
}
