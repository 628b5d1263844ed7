import type { secondFactorOn } from '@garboard/contract/account';
import type { Sealer } from '@garboard/platform/sealing';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { atTheKeyboard, currentSession } from './prove-presence.ts';
import { makeRecoveryCodes } from './recovery-codes.ts';
import { useCode } from './second-factor.ts';
import { type Origin, startSession } from './start-session.ts';
import { tellOfAccount } from './tell-of-account.ts';

export interface GivenCode {
  code: string;
  sealer: Sealer;
}

/**
 * Begins to ask for codes, once the app has shown a right one. Every session ends, and a new one begins for whoever
 * showed it: one that was taken before knows nothing of the second factor. Answers the recovery codes, this once.
 *
 * @throws Refusal `wrong-code`; `wrong-state` when nothing was begun or it is on already
 */
export async function confirmSecondFactor(
  ctx: Ctx,
  { code, sealer, origin }: GivenCode & { origin: Origin },
): Promise<z.output<typeof secondFactorOn>> {
  const { personId, name, email } = atTheKeyboard(ctx);
  await useCode(ctx, { personId, code, sealer });
  const confirmed = await ctx.tx.secondFactor.updateMany({
    where: { personId, confirmedAt: null },
    data: { confirmedAt: ctx.clock() },
  });
  if (confirmed.count === 0) throw wrongState('Codes are asked for already.');
  const { byLink } = await currentSession(ctx, origin.sessionHash);
  await ctx.tx.session.deleteMany({ where: { personId } });
  await tellOfAccount(ctx, personId, 'second-factor-on');
  const { token, expiresAt } = await startSession(ctx, { id: personId, name, email }, origin, { byLink });
  return { recoveryCodes: await makeRecoveryCodes(ctx, personId), token, expiresAt };
}
