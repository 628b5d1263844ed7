import { type Action, type Grant, grantFor, type Role } from '@garboard/trade/permissions';
import type { PartyRole } from '@garboard/trade/vocabulary';
import { notAllowed } from '../problems.ts';
import { type Actor, firmRole } from './actor.ts';

/** A row of the actor's own among a survey's parties (`ownParties`). */
export interface Part {
  role: string;
  released: boolean;
  held: boolean;
  client: boolean;
}

/** What of a survey decides who may do what with it; `parties` are the actor's own rows. */
export interface Standing {
  firmId: string;
  clearanceDecidedBy: string;
  parties: readonly Part[];
}

/** The roles in which the actor faces this survey. */
export function rolesOn(actor: Actor, standing: Standing): Role[] {
  const staff = firmRole(actor, standing.firmId);
  const parties = standing.parties.map((p) => p.role as PartyRole);
  return staff ? [staff, ...parties] : parties;
}

/** Whether what was issued is shown to this party. */
const sees = (part: Part) => part.released && !part.held;

/**
 * Whether a party meets a grant's condition. Of `assigned` the finding itself is settled before: to a yard no others
 * are visible.
 */
function meets(part: Part, grant: Grant, decidedByInsurer: boolean): boolean {
  if (grant === 'yes') return true;
  if (grant === 'client') return part.client;
  if (grant === 'decides') return sees(part) && decidedByInsurer;
  return sees(part);
}

/** The first role in which the actor may do this, or null. */
export function roleFor(actor: Actor, standing: Standing, action: Action): Role | null {
  const staff = firmRole(actor, standing.firmId);
  const decidesAsStaff = standing.clearanceDecidedBy === 'surveyor';
  if (staff) {
    const grant = grantFor(action, staff);
    if (grant === 'yes' || (grant === 'decides' && decidesAsStaff)) return staff;
  }
  for (const part of standing.parties) {
    const role = part.role as PartyRole;
    const grant = grantFor(action, role);
    if (grant && meets(part, grant, !decidesAsStaff)) return role;
  }
  return null;
}

export const may = (actor: Actor, standing: Standing, action: Action): boolean =>
  roleFor(actor, standing, action) !== null;

/** The role in which the actor does this. @throws Refusal `not-allowed` with this sentence. */
export function authorise(actor: Actor, standing: Standing, action: Action, detail: string): Role {
  const role = roleFor(actor, standing, action);
  if (!role) throw notAllowed(detail);
  return role;
}

/** Whether the actor works for the firm, and so sees drafts. */
export const isStaff = (actor: Actor, standing: { firmId: string }): boolean =>
  firmRole(actor, standing.firmId) !== null;

/** Whether what was issued of this survey is shown to the actor. */
export const seesIssued = (actor: Actor, standing: Standing): boolean =>
  isStaff(actor, standing) || standing.parties.some(sees);
