import type { JobData } from '@garboard/contract/jobs';
import { hashToken, newToken } from '@garboard/core/people/tokens';
import { inTransaction } from '@garboard/db/database';
import type { JobDeps } from '../job-deps.ts';
import { invitationMail } from './invitation-mail.ts';

/**
 * Mails a one-time link. Only the hash of its secret is kept, so the secret is made here; a repeated attempt makes
 * another, and the link mailed before, if any, no longer works.
 */
export async function mailInvitationJob(
  deps: JobDeps,
  { linkId }: JobData<'mail.invitation'>,
): Promise<void> {
  const { db, clock, env, mail, log } = deps;
  const token = newToken();
  const link = await inTransaction(db, [], async (tx) => {
    const open = { id: linkId, usedAt: null, expiresAt: { gt: clock() }, email: { not: null } };
    const renewed = await tx.oneTimeLink.updateMany({ where: open, data: { tokenHash: hashToken(token) } });
    return renewed.count === 0 ? null : tx.oneTimeLink.findUnique({ where: { id: linkId } });
  });
  if (!link?.email) return log.info({ linkId }, 'invitation used, expired or withdrawn: nothing to mail');
  // After the hash sign, so that it is never sent to a server or written into its log.
  const address = `${env.publicUrl}/welcome#token=${token}`;
  const host = new URL(env.publicUrl).hostname;
  await mail.sendMail({
    to: link.email,
    messageId: `${linkId}.${hashToken(token).slice(0, 12)}@${host}`,
    ...invitationMail(address, link.expiresAt),
  });
}
