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
}

/** Garboard itself, doing a job or loading data, within one firm or several. */
export interface SystemActor {
  kind: 'system';
  firmIds: readonly string[];
}

export type Actor = PersonActor | SystemActor;

/** Firms the actor works for. */
export const staffFirmIds = (actor: Actor): string[] =>
  actor.kind === 'system' ? [...actor.firmIds] : actor.memberships.map((m) => m.firmId);

/** The role the actor has in a firm, or null. */
export const firmRole = (actor: Actor, firmId: string): FirmRole | null =>
  actor.kind === 'system' ? 'principal' : (actor.memberships.find((m) => m.firmId === firmId)?.role ?? null);

/** The person's id, or null when Garboard itself acts. */
export const actorId = (actor: Actor): string | null => (actor.kind === 'person' ? actor.personId : null);

/** The name that the history shows. */
export const actorName = (actor: Actor): string => (actor.kind === 'person' ? actor.name : 'Garboard');
