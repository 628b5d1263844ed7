import type { AccountChange, JobData } from '@garboard/contract/jobs';
import { inTransaction } from '@garboard/db/database';
import type { JobDeps } from '../job-deps.ts';
import { mailPage } from './mail-page.ts';
import { sendToAddress } from './send-to-address.ts';

const words: Record<AccountChange, { subject: string; sentence: string }> = {
  'password-changed': {
    subject: 'Your Garboard password was changed',
    sentence: 'The password of your account was set or changed. You were signed out everywhere else.',
  },
  'second-factor-on': {
    subject: 'Garboard now asks you for codes',
    sentence:
      'A second factor was added to your account: signing in now takes a code of your authenticator app. You were signed out everywhere else.',
  },
  'second-factor-off': {
    subject: 'Garboard no longer asks you for codes',
    sentence: 'The second factor of your account was removed: signing in takes no code any more.',
  },
  'recovery-code-used': {
    subject: 'A recovery code of your Garboard account was used',
    sentence: 'One of your recovery codes was used in place of a code of your authenticator app.',
  },
  'webhook-disabled': {
    subject: 'A system of yours is no longer told by Garboard',
    sentence:
      'An address to which events were sent has answered none for five days, or asked for no more, and was switched off. It can be started again under “Other systems”; what was missed can be sent again.',
  },
  'api-key-made': {
    subject: 'A key for programs was made in your name',
    sentence: 'A key was made by which a program acts for you in Garboard.',
  },
};

const asking = 'If this was not you, have a link sent, sign in, and look through “Your account” at once:';

/** Tells a person that how they sign in was changed; whoever changed it may have been somebody else. */
export async function mailAccountChangeJob(
  deps: JobDeps,
  { messageId, personId, change }: JobData<'mail.account-change'>,
): Promise<void> {
  const { db, env } = deps;
  const person = await inTransaction(db, [], (tx) => tx.person.findUnique({ where: { id: personId } }));
  if (!person) return;
  const { subject, sentence } = words[change];
  const address = `${env.publicUrl}/account`;
  await sendToAddress(deps, {
    to: person.email,
    // The same message however often it is tried.
    messageId: `${messageId}@${new URL(env.publicUrl).hostname}`,
    subject,
    text: `${sentence}\n\n${asking}\n${address}\n`,
    html: mailPage({ title: subject, paragraphs: [sentence], asking, address }),
  });
}
