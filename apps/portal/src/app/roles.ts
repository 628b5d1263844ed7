import type { Survey } from '@garboard/contract/surveys';
import type { Action, Role } from '@garboard/trade/permissions';
import { grantFor } from '@garboard/trade/permissions';
import { firmRoles, partyRoles } from '@garboard/trade/vocabulary';

const roles: readonly Role[] = [...firmRoles, ...partyRoles];

function rolesIn(survey: Survey): Role[] {
  return roles.filter((role) => survey.myRoles.includes(role));
}

/** Whether the person works for the firm whose survey this is. */
export function isStaffOf(survey: Survey): boolean {
  return firmRoles.some((role) => survey.myRoles.includes(role));
}

/**
 * Whether to offer an action on a survey at all. The server has the last word; this only spares people buttons
 * that would be refused.
 */
export function mayDo(action: Action, survey: Survey): boolean {
  return rolesIn(survey).some((role) => {
    const grant = grantFor(action, role);
    if (grant === 'client') return survey.client;
    if (grant === 'released' || grant === 'assigned') return survey.released;
    if (grant !== 'decides') return grant !== null;
    return survey.clearanceDecidedBy === (role === 'insurer' ? 'insurer' : 'surveyor');
  });
}
