import type { recoveryCodes } from '@garboard/contract/account';
import type { Sealer } from '@garboard/platform/sealing';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { atTheKeyboard } from './prove-presence.ts';
import { makeRecoveryCodes } from './recovery-codes.ts';
import { useCode } from './second-factor.ts';
import { tellOfAccount } from './tell-of-account.ts';

export interface GivenCode {
  code: string;
  sealer: Sealer;
  sessionHash: string | null;
}

/**
 * Begins to ask for codes, once the app has shown a right one; every other session ends. Answers the recovery codes,
 * this once.
 *
 * @throws Refusal `wrong-code`; `wrong-state` when nothing was begun or it is on already
 */
export async function confirmSecondFactor(
  ctx: Ctx,
  { code, sealer, sessionHash }: GivenCode,
): Promise<z.output<typeof recoveryCodes>> {
  const { personId } = atTheKeyboard(ctx);
  await useCode(ctx, { personId, code, sealer });
  const confirmed = await ctx.tx.secondFactor.updateMany({
    where: { personId, confirmedAt: null },
    data: { confirmedAt: ctx.clock() },
  });
  if (confirmed.count === 0) throw wrongState('Codes are asked for already.');
  await ctx.tx.session.deleteMany({ where: { personId, NOT: { tokenHash: sessionHash ?? '' } } });
  await tellOfAccount(ctx, personId, 'second-factor-on');
  return { recoveryCodes: await makeRecoveryCodes(ctx, personId) };
}
