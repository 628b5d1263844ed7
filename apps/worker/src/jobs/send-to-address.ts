import { addressRefused, addressTaken } from '@garboard/core/notices/address-standing';
import { inTransaction } from '@garboard/db/database';
import { type MailMessage, MailRefusedError } from '@garboard/platform/mail';
import { NoRetryError } from '@garboard/platform/queue';
import type { JobDeps } from '../job-deps.ts';

/**
 * Sends a message that isn't gathered, such as a link, and notes how the mail server stands to its address.
 *
 * @throws NoRetryError when the server refused it for good; Error when it may take it later
 */
export async function sendToAddress(
  { db, clock, mail }: Pick<JobDeps, 'db' | 'clock' | 'mail'>,
  message: MailMessage,
): Promise<void> {
  const email = message.to;
  try {
    await mail.sendMail(message);
  } catch (error) {
    if (!(error instanceof MailRefusedError)) throw error;
    const problem = error.message;
    if (error.address) {
      await inTransaction(db, [], (tx) => addressRefused({ tx, clock }, { email, problem }));
    }
    throw new NoRetryError(`The mail server refused it: ${problem}`);
  }
  await inTransaction(db, [], (tx) => addressTaken({ tx, clock }, email));
}
