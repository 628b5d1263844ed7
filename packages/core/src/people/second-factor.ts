import type { Sealer } from '@garboard/platform/sealing';
import { Secret, TOTP } from 'otpauth';
import type { Ctx } from '../context.ts';
import { Refusal } from '../problems.ts';
import { secretFits } from './passwords.ts';
import { markOf } from './recovery-codes.ts';
import { tellOfAccount } from './tell-of-account.ts';

// What every authenticator app understands (RFC 6238, appendix of defaults): SHA-1, six digits, half a minute.
const shape = { algorithm: 'SHA1', digits: 6, period: 30 };
/** Steps by which an app's clock may be off, either way. */
const window = 1;

/** A secret is sealed for its person and opens for no other. */
export const secondFactorPurpose = (personId: string): string => `second factor of ${personId}`;

/** The generator of codes over a secret. @param label whose it is, as the app will show it */
export const codesOf = (secret: Uint8Array, label = ''): TOTP =>
  new TOTP({
    ...shape,
    issuer: 'Garboard',
    label,
    secret: new Secret({ buffer: Uint8Array.from(secret).buffer }),
  });

/** The time step that a code of six digits belongs to, now or one step to either side; null when it fits none. */
export function stepOf(secret: Uint8Array, code: string, now: Date): number | null {
  const timestamp = now.getTime();
  const delta = codesOf(secret).validate({ token: code, timestamp, window });
  return delta === null ? null : Math.floor(timestamp / 1000 / shape.period) + delta;
}

const wrongCode = () =>
  new Refusal(
    'wrong-code',
    'Type the code that your app shows now; each works once. If it is never right, set your telephone’s clock.',
  );

interface Given {
  personId: string;
  code: string;
  sealer: Sealer;
}

/**
 * Uses up a code of the app, or a recovery code. A code's time step is remembered, so neither it nor an earlier one
 * works again, whoever has seen it.
 *
 * @throws Refusal `wrong-code`
 */
export async function useCode(ctx: Ctx, { personId, code, sealer }: Given): Promise<void> {
  const factor = await ctx.tx.secondFactor.findUnique({ where: { personId } });
  if (!factor) throw wrongCode();
  if (!/^\d{6}$/.test(code)) return useRecoveryCode(ctx, personId, code);
  const step = stepOf(sealer.open(factor.sealed, secondFactorPurpose(personId)), code, ctx.clock());
  if (step === null) throw wrongCode();
  const used = await ctx.tx.secondFactor.updateMany({
    where: { personId, lastStep: { lt: step } },
    data: { lastStep: step },
  });
  if (used.count === 0) throw wrongCode();
}

async function useRecoveryCode(ctx: Ctx, personId: string, code: string): Promise<void> {
  const kept = await ctx.tx.recoveryCode.findUnique({
    where: { personId_mark: { personId, mark: markOf(code) } },
  });
  const fits = await secretFits(kept?.hash ?? null, code);
  if (!kept || !fits) throw wrongCode();
  const used = await ctx.tx.recoveryCode.updateMany({
    where: { id: kept.id, usedAt: null },
    data: { usedAt: ctx.clock() },
  });
  if (used.count === 0) throw wrongCode();
  await tellOfAccount(ctx, personId, 'recovery-code-used');
}

/** Whether a person is asked for codes. */
export async function hasSecondFactor(ctx: Ctx, personId: string): Promise<boolean> {
  const factor = await ctx.tx.secondFactor.findUnique({ where: { personId }, select: { confirmedAt: true } });
  return factor !== null && factor.confirmedAt !== null;
}

/** Asks people who have a second factor for a code. @throws Refusal `code-needed`, `wrong-code` */
export async function askSecondFactor(
  ctx: Ctx,
  { personId, code, sealer }: { personId: string; code: string | undefined; sealer: Sealer },
): Promise<void> {
  if (!(await hasSecondFactor(ctx, personId))) return;
  if (code === undefined) {
    throw new Refusal('code-needed', 'Type the code that your authenticator app shows, or a recovery code.');
  }
  await useCode(ctx, { personId, code, sealer });
}
