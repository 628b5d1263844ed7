import { type Action, grantFor } from '@garboard/trade/permissions';
import type { FirmRole } from '@garboard/trade/vocabulary';
import { invalidField, notAllowed } from '../problems.ts';
import { type Actor, membershipsOf } from './actor.ts';

/**
 * The firm for which the actor records something new: the one named, or the only one they work for.
 *
 * @throws Refusal `not-allowed` when they work for none that may; `invalid-input` when they must choose.
 */
export function workingFirm(
  actor: Actor,
  wished: string | undefined,
  action: Action,
): { firmId: string; role: FirmRole } {
  const memberships =
    actor.kind === 'system'
      ? actor.firmIds.map((firmId) => ({ firmId, role: 'principal' as const }))
      : membershipsOf(actor);
  const able = memberships.filter((m) => grantFor(action, m.role) === 'yes');
  const fitting = wished ? able.filter((m) => m.firmId === wished) : able;
  const [first, second] = fitting;
  if (!first) throw notAllowed('Only staff of a survey firm may do this.');
  if (second) throw invalidField('/firmId', 'You work for several firms; say for which one in firmId.');
  return first;
}
