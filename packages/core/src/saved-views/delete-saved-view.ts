import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { viewer } from './own-view.ts';

/** Forgets one of the person's views. @throws Refusal `not-found` */
export async function deleteSavedView(ctx: Ctx, id: string): Promise<void> {
  const deleted = await ctx.tx.savedView.deleteMany({ where: { id, personId: viewer(ctx.actor) } });
  if (deleted.count === 0) throw notFound('view');
}
