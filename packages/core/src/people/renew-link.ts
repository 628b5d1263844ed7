import { linkMinutes } from '@garboard/contract/limits';
import type { Ctx } from '../context.ts';
import { hashToken, newToken } from './tokens.ts';

/** A link ready to be mailed, with the secret that only the mail will hold. */
export interface MailableLink {
  email: string;
  name: string;
  /** As kept for the person. */
  language: string;
  token: string;
  expiresAt: Date;
}

/**
 * Gives a link a fresh secret and its 15 minutes from now; one mailed before under the same row, if any, no longer
 * works. Null when it was used, is too old to be sent, or nobody has an account under its address.
 */
export async function renewLink(
  ctx: Pick<Ctx, 'tx' | 'clock'>,
  linkId: string,
): Promise<MailableLink | null> {
  const now = ctx.clock();
  const token = newToken();
  const expiresAt = new Date(now.getTime() + linkMinutes * 60_000);
  const open = { id: linkId, usedAt: null, mailBy: { gt: now } };
  const renewed = await ctx.tx.oneTimeLink.updateMany({
    where: open,
    data: { tokenHash: hashToken(token), expiresAt },
  });
  if (renewed.count === 0) return null;
  const link = await ctx.tx.oneTimeLink.findUnique({ where: { id: linkId } });
  const person = link?.email ? await ctx.tx.person.findUnique({ where: { email: link.email } }) : null;
  return person && { email: person.email, name: person.name, language: person.language, token, expiresAt };
}
