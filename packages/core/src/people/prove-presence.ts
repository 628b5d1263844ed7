import { linkMinutes } from '@garboard/contract/limits';
import type { PersonActor } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { notAllowed, Refusal } from '../problems.ts';
import { secretFits } from './passwords.ts';

/** For so long after signing in nothing more is asked. */
const freshMs = linkMinutes * 60_000;

/** The person at the keyboard; a program with a key may not touch how its person signs in. @throws Refusal `not-allowed` */
export function atTheKeyboard(ctx: Ctx): PersonActor {
  const { actor } = ctx;
  if (actor.kind !== 'person' || actor.key) {
    throw notAllowed('Sign in as yourself for this; a key for programs can’t do it.');
  }
  return actor;
}

/** The session that asks. */
export async function currentSession(ctx: Ctx, sessionHash: string | null) {
  const session = sessionHash ? await ctx.tx.session.findUnique({ where: { tokenHash: sessionHash } }) : null;
  if (!session) throw new Refusal('not-signed-in', 'Your session has ended. Sign in and try again.');
  const fresh = ctx.clock().getTime() - session.createdAt.getTime() < freshMs;
  return { ...session, fresh };
}

export interface Proof {
  sessionHash: string | null;
  currentPassword: string | undefined;
  /** Only a link just opened stands in for the password, as when it has been forgotten. */
  linkOnly?: boolean;
}

/**
 * Makes sure that it is the person who is at the keyboard, not somebody who found it unlocked: by the password, or
 * because they have only just signed in.
 *
 * @throws Refusal `proof-needed`
 */
export async function provePresence(ctx: Ctx, proof: Proof): Promise<PersonActor> {
  const actor = atTheKeyboard(ctx);
  const session = await currentSession(ctx, proof.sessionHash);
  const person = await ctx.tx.person.findUniqueOrThrow({
    where: { id: actor.personId },
    select: { passwordHash: true },
  });
  const pointer = '/currentPassword';
  if (proof.currentPassword !== undefined && person.passwordHash !== null) {
    if (await secretFits(person.passwordHash, proof.currentPassword)) return actor;
    throw new Refusal('proof-needed', 'Your current password is not right.', [
      { pointer, detail: 'This is not your current password.' },
    ]);
  }
  if (session.fresh && (session.byLink || !proof.linkOnly || person.passwordHash === null)) return actor;
  const detail =
    person.passwordHash === null
      ? `Sign out, have a link sent and sign in by it; then do this within ${linkMinutes} minutes.`
      : 'Give your current password. If you have forgotten it, sign out and have a link sent.';
  throw new Refusal('proof-needed', detail, [{ pointer, detail }]);
}
