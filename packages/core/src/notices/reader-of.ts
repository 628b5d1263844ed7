import { type Actor, actorId } from '../access/actor.ts';
import { notAllowed } from '../problems.ts';

/** The person whose notices are meant. @throws Refusal `not-allowed` when no person acts. */
export function readerOf(actor: Actor): string {
  const personId = actorId(actor);
  if (!personId) throw notAllowed('Only a person is told of things.');
  return personId;
}
