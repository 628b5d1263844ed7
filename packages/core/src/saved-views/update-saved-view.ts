import type { SavedView, savedViewPatch } from '@garboard/contract/saved-views';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { presentView, unlessNameTaken, viewer } from './own-view.ts';

export interface UpdateSavedView {
  id: string;
  patch: z.output<typeof savedViewPatch>;
}

/** Renames one of the person's views or gives it other filters. @throws Refusal `not-found`, `wrong-state` */
export async function updateSavedView(ctx: Ctx, { id, patch }: UpdateSavedView): Promise<SavedView> {
  const where = { id, personId: viewer(ctx.actor) };
  const data = {
    ...(patch.name === undefined ? {} : { name: patch.name }),
    ...(patch.query === undefined ? {} : { query: patch.query }),
  };
  const changed = await unlessNameTaken(patch.name ?? '', ctx.tx.savedView.updateMany({ where, data }));
  if (changed.count === 0) throw notFound('view');
  return presentView(await ctx.tx.savedView.findUniqueOrThrow({ where: { id } }));
}
