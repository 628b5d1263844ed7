import { linkMinutes } from '@garboard/contract/limits';
import type { sessionCreated, welcome, welcomeInfo } from '@garboard/contract/people';
import { widen } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { Sealer } from '@garboard/platform/sealing';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { invalidField, Refusal, wrongState } from '../problems.ts';
import { refuseCommonPassword } from './password-strength.ts';
import { hashPassword } from './passwords.ts';
import { askSecondFactor, hasSecondFactor } from './second-factor.ts';
import { type Origin, startSession } from './start-session.ts';
import { hashToken } from './tokens.ts';

const spent = () =>
  new Refusal(
    'link-spent',
    `A link works once, within ${linkMinutes} minutes. Give your e-mail address to have a new one sent.`,
  );

async function usableLink(ctx: Ctx, token: string) {
  const link = await ctx.tx.oneTimeLink.findUnique({ where: { tokenHash: hashToken(token) } });
  if (!link || link.usedAt || link.expiresAt <= ctx.clock()) throw spent();
  return link;
}

/** What a one-time link is for. @throws Refusal `link-spent` */
export async function lookUpWelcome(ctx: Ctx, token: string): Promise<z.output<typeof welcomeInfo>> {
  const link = await usableLink(ctx, token);
  if (link.kind === 'first-account') {
    return { kind: 'first-account', email: null, name: null, codeNeeded: false };
  }
  const person = await ctx.tx.person.findUnique({ where: { email: link.email ?? '' } });
  if (!person) throw spent();
  return {
    kind: link.kind === 'sign-in' ? 'sign-in' : 'invitation',
    email: person.email,
    name: person.name,
    codeNeeded: await hasSecondFactor(ctx, person.id),
  };
}

/**
 * Uses a one-time link, once: founds the firm on a first account, else signs in whoever has the address it was sent
 * to, with a code where that person has a second factor. A password given with it is set if there was none.
 *
 * @throws Refusal `link-spent`; `code-needed` and `wrong-code`, which leave the link usable; `invalid-input`
 */
export async function useWelcome(
  ctx: Ctx,
  { origin, sealer, ...input }: z.output<typeof welcome> & { origin: Origin; sealer: Sealer },
): Promise<z.output<typeof sessionCreated>> {
  const link = await usableLink(ctx, input.token);
  const used = await ctx.tx.oneTimeLink.updateMany({
    where: { id: link.id, usedAt: null },
    data: { usedAt: ctx.clock() },
  });
  if (used.count === 0) throw spent();
  if (link.kind === 'first-account') return foundFirm(ctx, input, origin);
  const person = await ctx.tx.person.findUnique({ where: { email: link.email ?? '' } });
  if (!person) throw spent();
  await askSecondFactor(ctx, { personId: person.id, code: input.code, sealer });
  if (input.password !== undefined) {
    if (person.passwordHash !== null) {
      throw invalidField(
        '/password',
        'You have a password. Sign in first, then change it under “Your account”.',
      );
    }
    refuseCommonPassword(input.password, [person.name, person.email]);
    const passwordHash = await hashPassword(input.password);
    await ctx.tx.person.update({ where: { id: person.id }, data: { passwordHash } });
  }
  return startSession(ctx, person, origin, { byLink: true });
}

async function foundFirm(ctx: Ctx, input: z.output<typeof welcome>, origin: Origin) {
  const { name, email, firmName, password } = input;
  if (!name) throw invalidField('/name', 'Give your name.');
  if (!email) throw invalidField('/email', 'Give your e-mail address; you will sign in with it.');
  if (!firmName) throw invalidField('/firmName', 'Give the name of your firm.');
  if (!password) throw invalidField('/password', 'Choose a password of 12 characters or more.');
  refuseCommonPassword(password, [name, email, firmName]);
  if (await ctx.tx.person.findFirst({ select: { id: true } })) {
    throw wrongState('This installation has its first account already. Ask its principal to invite you.');
  }
  const firmId = newId();
  const passwordHash = await hashPassword(password);
  await widen(ctx.tx, [firmId]);
  await ctx.tx.firm.create({ data: { id: firmId, name: firmName, email } });
  const person = await ctx.tx.person.create({ data: { id: newId(), name, email, passwordHash } });
  await ctx.tx.firmMember.create({ data: { id: newId(), firmId, personId: person.id, role: 'principal' } });
  return startSession(ctx, person, origin);
}
