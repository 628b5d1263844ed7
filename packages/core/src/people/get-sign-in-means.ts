import type { signInMeans } from '@garboard/contract/account';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { atTheKeyboard, currentSession } from './prove-presence.ts';

/** How the person signs in, and whether this session may change that without the password. */
export async function getSignInMeans(
  ctx: Ctx,
  sessionHash: string | null,
): Promise<z.output<typeof signInMeans>> {
  const { personId } = atTheKeyboard(ctx);
  const person = await ctx.tx.person.findUniqueOrThrow({
    where: { id: personId },
    select: { email: true, passwordHash: true, secondFactor: { select: { confirmedAt: true } } },
  });
  const session = await currentSession(ctx, sessionHash);
  const since = person.secondFactor?.confirmedAt ?? null;
  return {
    email: person.email,
    passwordSet: person.passwordHash !== null,
    secondFactorSince: since?.toISOString() ?? null,
    recoveryCodesLeft: since ? await ctx.tx.recoveryCode.count({ where: { personId, usedAt: null } }) : 0,
    fresh: session.fresh,
    byLink: session.byLink,
  };
}
