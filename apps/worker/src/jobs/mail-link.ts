import type { JobData } from '@garboard/contract/jobs';
import { renewLink } from '@garboard/core/people/renew-link';
import { hashToken } from '@garboard/core/people/tokens';
import { inTransaction } from '@garboard/db/database';
import type { JobDeps } from '../job-deps.ts';
import { linkMail } from './link-mails.ts';
import { sendToAddress } from './send-to-address.ts';

/**
 * Mails a one-time link. Only the hash of its secret is kept, so the secret is made here; a repeated attempt makes
 * another, and the link mailed before, if any, no longer works.
 */
async function mailLink(deps: JobDeps, kind: 'invitation' | 'sign-in', linkId: string): Promise<void> {
  const { db, clock, env, log } = deps;
  const link = await inTransaction(db, [], (tx) => renewLink({ tx, clock }, linkId));
  if (!link) return log.info({ linkId }, 'link used, too old or for nobody: nothing to mail');
  // After the hash sign, so that it is never sent to a server or written into its log.
  const address = `${env.publicUrl}/welcome#token=${link.token}`;
  const host = new URL(env.publicUrl).hostname;
  await sendToAddress(deps, {
    to: link.email,
    messageId: `${linkId}.${hashToken(link.token).slice(0, 12)}@${host}`,
    ...linkMail({ kind, address, language: link.language }),
  });
}

export const mailInvitationJob = (deps: JobDeps, { linkId }: JobData<'mail.invitation'>): Promise<void> =>
  mailLink(deps, 'invitation', linkId);

export const mailSignInLinkJob = (deps: JobDeps, { linkId }: JobData<'mail.sign-in-link'>): Promise<void> =>
  mailLink(deps, 'sign-in', linkId);
