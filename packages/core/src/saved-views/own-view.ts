import type { SavedView, savedViewCreate } from '@garboard/contract/saved-views';
import { isUniqueViolation, type Prisma } from '@garboard/db/database';
import type { z } from 'zod';
import { type Actor, actorId } from '../access/actor.ts';
import { notAllowed, wrongState } from '../problems.ts';

type Row = Prisma.SavedViewGetPayload<object>;

/** The person whose views are read and written. @throws Refusal `not-allowed` for Garboard itself. */
export function viewer(actor: Actor): string {
  const personId = actorId(actor);
  if (!personId) throw notAllowed('Only a person has views of their own.');
  return personId;
}

export function presentView(row: Row): SavedView {
  const { page, query } = row as Row & Pick<z.output<typeof savedViewCreate>, 'page' | 'query'>;
  return { id: row.id, page, name: row.name, query, createdAt: row.createdAt.toISOString() };
}

/** Runs a write that may meet another view of that name. @throws Refusal `wrong-state` */
export async function unlessNameTaken<T>(name: string, write: Promise<T>): Promise<T> {
  try {
    return await write;
  } catch (error) {
    if (!isUniqueViolation(error)) throw error;
    throw wrongState(`You have a view called “${name}” for this list already. Choose another name.`);
  }
}
