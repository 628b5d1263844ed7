import type { recoveryCodes } from '@garboard/contract/account';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import type { GivenCode } from './confirm-second-factor.ts';
import { atTheKeyboard } from './prove-presence.ts';
import { makeRecoveryCodes } from './recovery-codes.ts';
import { hasSecondFactor, useCode } from './second-factor.ts';
import { tellOfAccount } from './tell-of-account.ts';

async function personShowing(ctx: Ctx, { code, sealer }: GivenCode): Promise<string> {
  const { personId } = atTheKeyboard(ctx);
  if (!(await hasSecondFactor(ctx, personId))) throw wrongState('You have no second factor.');
  await useCode(ctx, { personId, code, sealer });
  return personId;
}

/** Asks for codes no more; a last one, or a recovery code, is shown for it. @throws Refusal `wrong-code`, `wrong-state` */
export async function removeSecondFactor(ctx: Ctx, given: GivenCode): Promise<void> {
  const personId = await personShowing(ctx, given);
  await ctx.tx.secondFactor.deleteMany({ where: { personId } });
  await ctx.tx.recoveryCode.deleteMany({ where: { personId } });
  await tellOfAccount(ctx, personId, 'second-factor-off');
}

/** Makes new recovery codes; those there were no longer work. @throws Refusal `wrong-code`, `wrong-state` */
export async function renewRecoveryCodes(
  ctx: Ctx,
  given: GivenCode,
): Promise<z.output<typeof recoveryCodes>> {
  const personId = await personShowing(ctx, given);
  return { recoveryCodes: await makeRecoveryCodes(ctx, personId) };
}
