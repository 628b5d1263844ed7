import type { sessionCreated, welcome, welcomeInfo } from '@garboard/contract/people';
import { widen } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { invalidField, Refusal, wrongState } from '../problems.ts';
import { hashPassword } from './passwords.ts';
import { startSession } from './start-session.ts';
import { hashToken } from './tokens.ts';

const spent = () =>
  new Refusal(
    'link-spent',
    'This link was used before or is too old. Ask whoever invited you for a new one.',
  );

async function usableLink(ctx: Ctx, token: string) {
  const link = await ctx.tx.oneTimeLink.findUnique({ where: { tokenHash: hashToken(token) } });
  if (!link || link.usedAt || link.expiresAt <= ctx.clock()) throw spent();
  return link;
}

/** What a one-time link is for. @throws Refusal `link-spent` */
export async function lookUpWelcome(ctx: Ctx, token: string): Promise<z.output<typeof welcomeInfo>> {
  const link = await usableLink(ctx, token);
  const person = link.email ? await ctx.tx.person.findUnique({ where: { email: link.email } }) : null;
  const kind = link.kind === 'first-account' ? 'first-account' : 'invitation';
  return { kind, email: link.email, name: person?.name ?? null };
}

/** Uses a one-time link, once: sets the password, founds the firm on a first account, and signs in. */
export async function useWelcome(
  ctx: Ctx,
  input: z.output<typeof welcome>,
): Promise<z.output<typeof sessionCreated>> {
  const link = await usableLink(ctx, input.token);
  const used = await ctx.tx.oneTimeLink.updateMany({
    where: { id: link.id, usedAt: null },
    data: { usedAt: ctx.clock() },
  });
  if (used.count === 0) throw spent();
  const passwordHash = await hashPassword(input.password);
  if (link.kind === 'first-account') return foundFirm(ctx, input, passwordHash);
  const person = await ctx.tx.person.findUnique({ where: { email: link.email ?? '' } });
  if (!person || person.passwordHash !== null) throw spent();
  await ctx.tx.person.update({ where: { id: person.id }, data: { passwordHash } });
  return startSession(ctx, person);
}

async function foundFirm(ctx: Ctx, input: z.output<typeof welcome>, passwordHash: string) {
  const { name, email, firmName } = input;
  if (!name) throw invalidField('/name', 'Give your name.');
  if (!email) throw invalidField('/email', 'Give your e-mail address; you will sign in with it.');
  if (!firmName) throw invalidField('/firmName', 'Give the name of your firm.');
  if (await ctx.tx.person.findFirst({ select: { id: true } })) {
    throw wrongState('This installation has its first account already. Ask its principal to invite you.');
  }
  const firmId = newId();
  await widen(ctx.tx, [firmId]);
  await ctx.tx.firm.create({ data: { id: firmId, name: firmName, email } });
  const person = await ctx.tx.person.create({ data: { id: newId(), name, email, passwordHash } });
  await ctx.tx.firmMember.create({ data: { id: newId(), firmId, personId: person.id, role: 'principal' } });
  return startSession(ctx, person);
}
