import type { JobData } from '@garboard/contract/jobs';
import { type ClaimedMail, claimMail, type Outcome, settleMail } from '@garboard/core/notices/deliver-mail';
import { mailContents } from '@garboard/core/notices/mail-contents';
import { inTransaction } from '@garboard/db/database';
import { MailRefusedError } from '@garboard/platform/mail';
import type { JobDeps } from '../job-deps.ts';
import { noticeMail } from './notice-mail.ts';

/**
 * Sends a gathered message. Its words are made now, so that it tells nothing which its person has read meanwhile or
 * may no longer see. A mail server that is away is tried again by the sweep, for days if need be.
 */
export async function deliverMailJob(deps: JobDeps, { mailId }: JobData<'mail.deliver'>): Promise<void> {
  const { db, clock, log } = deps;
  const mail = await inTransaction(db, [], (tx) => claimMail({ tx, clock }, mailId));
  if (!mail) return log.info({ mailId }, 'message sent already, or not due yet');
  const outcome = await send(deps, mail);
  if ('problem' in outcome) log.warn({ mailId, ...outcome, attempts: mail.attempts }, 'message not sent');
  await inTransaction(db, [], (tx) => settleMail({ tx, clock }, mail, outcome));
}

async function send({ db, env, mail: mailer }: JobDeps, mail: ClaimedMail): Promise<Outcome> {
  const contents = await inTransaction(db, mail.firmIds, (tx) =>
    mailContents({ tx }, { mailId: mail.id, personId: mail.personId }),
  );
  if (!contents) return { state: 'dropped' };
  if (contents.person.mailProblem !== null) {
    return { state: 'refused', problem: contents.person.mailProblem, address: true };
  }
  try {
    await mailer.sendMail({
      to: contents.person.email,
      // The same message however often it is tried.
      messageId: `${mail.id}@${new URL(env.publicUrl).hostname}`,
      settingsUrl: `${env.publicUrl}/notices/settings`,
      ...noticeMail(contents, env.publicUrl),
    });
    return { state: 'sent' };
  } catch (error) {
    const problem = error instanceof Error ? error.message.slice(0, 300) : String(error);
    return error instanceof MailRefusedError
      ? { state: 'refused', problem, address: error.address }
      : { state: 'away', problem };
  }
}
