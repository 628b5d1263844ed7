import { randomBytes } from 'node:crypto';
import type { secondFactorBegun } from '@garboard/contract/account';
import type { Sealer } from '@garboard/platform/sealing';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { type Proof, provePresence } from './prove-presence.ts';
import { codesOf, hasSecondFactor, secondFactorPurpose } from './second-factor.ts';

/** RFC 4226 recommends 160 bits. */
const secretBytes = 20;

/**
 * Makes the secret that an authenticator app is to share. Nothing is asked for until a first code has been shown.
 *
 * @throws Refusal `proof-needed`; `wrong-state` when there is a second factor already
 */
export async function beginSecondFactor(
  ctx: Ctx,
  { sealer, ...proof }: Proof & { sealer: Sealer },
): Promise<z.output<typeof secondFactorBegun>> {
  const { personId, email } = await provePresence(ctx, proof);
  if (await hasSecondFactor(ctx, personId)) {
    throw wrongState('You have a second factor. Remove it first to set up another app.');
  }
  const secret = randomBytes(secretBytes);
  const sealed = new Uint8Array(sealer.seal(secret, secondFactorPurpose(personId)));
  const fields = { sealed, confirmedAt: null, lastStep: 0, createdAt: ctx.clock() };
  await ctx.tx.secondFactor.upsert({
    where: { personId },
    create: { personId, ...fields },
    update: fields,
  });
  const codes = codesOf(secret, email);
  return { secret: codes.secret.base32, uri: codes.toString() };
}
