import type { Sight } from '@garboard/db/database';
import type { Role } from '@garboard/trade/permissions';
import type { FirmRole } from '@garboard/trade/vocabulary';

/** A person who has signed in, with the firms they work for and all firms whose rows they may touch. */
export interface PersonActor {
  kind: 'person';
  personId: string;
  name: string;
  email: string;
  memberships: readonly { firmId: string; role: FirmRole }[];
  /** Firms they work for and firms that have invited them. */
  firmIds: readonly string[];
  /** Acts by an API key: in this firm and in this role alone, and by `read` changes nothing. */
  key?: { id: string; firmId: string; role: Role; access: 'read' | 'write' };
}

/** Garboard itself, doing a job or loading data, within one firm or several. */
export interface SystemActor {
  kind: 'system';
  firmIds: readonly string[];
}

export type Actor = PersonActor | SystemActor;

/** The firms and roles in which the actor works as staff; of an API key the one it was made for, or none. */
export function membershipsOf(actor: PersonActor): readonly { firmId: string; role: FirmRole }[] {
  const { key, memberships } = actor;
  return key ? memberships.filter((m) => m.firmId === key.firmId && m.role === key.role) : memberships;
}

/** Firms the actor works for. */
export const staffFirmIds = (actor: Actor): string[] =>
  actor.kind === 'system' ? [...actor.firmIds] : membershipsOf(actor).map((m) => m.firmId);

/** The role the actor has in a firm, or null. */
export const firmRole = (actor: Actor, firmId: string): FirmRole | null =>
  actor.kind === 'system'
    ? 'principal'
    : (membershipsOf(actor).find((m) => m.firmId === firmId)?.role ?? null);

/** The person's id, or null when Garboard itself acts. */
export const actorId = (actor: Actor): string | null => (actor.kind === 'person' ? actor.personId : null);

/** The name that the history shows. */
export const actorName = (actor: Actor): string => (actor.kind === 'person' ? actor.name : 'Garboard');

/**
 * What a transaction of the actor's may touch. The staff of a firm see all of it, so parts taken in its surveys need
 * not be looked at; those in other firms' surveys do.
 */
export function sightOf(actor: Actor): Sight {
  if (actor.kind === 'system') return { firmIds: actor.firmIds, personId: null };
  const firmIds = staffFirmIds(actor);
  const { key, personId } = actor;
  const asParty = actor.firmIds.some((id) => !firmIds.includes(id) && (!key || key.firmId === id));
  return { firmIds, personId, asParty, key: key && { firmId: key.firmId, role: key.role } };
}
