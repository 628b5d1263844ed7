import type { passwordChange } from '@garboard/contract/account';
import type { sessionCreated } from '@garboard/contract/people';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { refuseCommonPassword } from './password-strength.ts';
import { hashPassword } from './passwords.ts';
import { provePresence } from './prove-presence.ts';
import { type Origin, startSession } from './start-session.ts';
import { tellOfAccount } from './tell-of-account.ts';

/**
 * Sets or changes the password; every session ends and a new one begins for whoever changed it.
 *
 * @throws Refusal `proof-needed`; `invalid-input` for a password that is too easy to guess
 */
export async function changePassword(
  ctx: Ctx,
  input: z.output<typeof passwordChange> & { origin: Origin },
): Promise<z.output<typeof sessionCreated>> {
  const { password, currentPassword, origin } = input;
  const { sessionHash } = origin;
  const { personId, name, email } = await provePresence(ctx, {
    sessionHash,
    currentPassword,
    linkOnly: true,
  });
  refuseCommonPassword(password, [name, email]);
  await ctx.tx.person.update({
    where: { id: personId },
    data: { passwordHash: await hashPassword(password) },
  });
  await ctx.tx.session.deleteMany({ where: { personId } });
  await tellOfAccount(ctx, personId, 'password-changed');
  return startSession(ctx, { id: personId, name, email }, origin);
}
