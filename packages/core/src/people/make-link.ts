import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { hashToken, newToken } from './tokens.ts';

const hourMs = 3_600_000;

/** For how long sending may be tried: whoever asks to sign in waits for it, an invitation can come later. */
const mailHours = { 'sign-in': 1, invitation: 72 };

/**
 * Asks the worker to mail a one-time link to an address. Until it does, the link has a secret known to nobody; its 15
 * minutes begin when it is sent.
 */
export async function makeLink(
  ctx: Ctx,
  { kind, email }: { kind: 'sign-in' | 'invitation'; email: string },
): Promise<void> {
  const linkId = newId();
  const mailBy = new Date(ctx.clock().getTime() + mailHours[kind] * hourMs);
  await ctx.tx.oneTimeLink.create({
    data: { id: linkId, kind, email, tokenHash: hashToken(newToken()), mailBy, expiresAt: mailBy },
  });
  await enqueue(ctx.tx, kind === 'invitation' ? 'mail.invitation' : 'mail.sign-in-link', { linkId });
}
