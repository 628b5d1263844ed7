import type { SavedView, savedViewCreate } from '@garboard/contract/saved-views';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { presentView, unlessNameTaken, viewer } from './own-view.ts';

const mostViews = 100;

/** Keeps the filters of a list under a name, for the person alone. @throws Refusal `wrong-state` for a name taken. */
export async function createSavedView(ctx: Ctx, input: z.output<typeof savedViewCreate>): Promise<SavedView> {
  const personId = viewer(ctx.actor);
  if ((await ctx.tx.savedView.count({ where: { personId } })) >= mostViews) {
    throw wrongState(`You have ${mostViews} views already. Delete one that you no longer use.`);
  }
  const data = { id: newId(), personId, ...input, createdAt: ctx.clock() };
  return presentView(await unlessNameTaken(input.name, ctx.tx.savedView.create({ data })));
}
