import type { Prisma } from '@garboard/db/database';
import { type Actor, actorId, staffFirmIds } from './actor.ts';

// "May see", one where-builder a noun. What these leave out does not exist for the caller.

/** Surveys of the actor's own firms, and surveys to which the actor is a party. */
export function visibleSurveys(actor: Actor): Prisma.SurveyWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  const personId = actorId(actor);
  return personId ? { OR: [own, { parties: { some: { personId } } }] } : own;
}

/** Surveys whose issued contents the actor may see: the firm's own, or released to the actor. */
export function releasedSurveys(actor: Actor): Prisma.SurveyWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  const personId = actorId(actor);
  return personId ? { OR: [own, { parties: { some: { personId, released: true } } }] } : own;
}

/** Vessels of the actor's own firms, and those of surveys to which the actor is a party. */
export function visibleVessels(actor: Actor): Prisma.VesselWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  const personId = actorId(actor);
  return personId ? { OR: [own, { surveys: { some: { parties: { some: { personId } } } } }] } : own;
}

/** All findings of the actor's own firms; of others only what was issued and released. */
export function visibleFindings(actor: Actor): Prisma.FindingWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  const personId = actorId(actor);
  if (!personId) return own;
  const released = { survey: { parties: { some: { personId, released: true } } } };
  return { OR: [own, { state: { not: 'draft' }, ...released }] };
}
