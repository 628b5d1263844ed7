import type { Prisma } from '@garboard/db/database';
import { type Actor, actorId, staffFirmIds } from '../access/actor.ts';

/** All photos of the actor's own firms; of others those shown in a report issued and released to the actor. */
export function visiblePhotos(actor: Actor): Prisma.PhotoWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  const personId = actorId(actor);
  if (!personId) return own;
  const survey = { parties: { some: { personId, released: true } } };
  return { OR: [own, { survey, reports: { some: { report: { state: 'issued' } } } }] };
}
