import { randomUUID } from 'node:crypto';
import { mkdir, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createTransport } from 'nodemailer';

/** One message. `messageId` without angle brackets; the same id for a repeated sending lets mail servers drop it. */
export interface MailMessage {
  to: string;
  subject: string;
  text: string;
  html: string;
  messageId: string;
}

export interface Mailer {
  /** Sends one message. @throws Error when the mail server refuses it or can't be reached. */
  sendMail(message: MailMessage): Promise<void>;
  close(): void;
}

/**
 * Opens the way mail leaves: the server at `smtpUrl`, else one `.eml` file a message in `$DATA_DIR/mail`,
 * named so that they sort by time.
 * @param from the sender's address, such as `Name <name@host>`.
 */
export function openMailer(options: { smtpUrl?: string; dataDir: string; from: string }): Mailer {
  if (options.smtpUrl) {
    const transport = createTransport(options.smtpUrl);
    return {
      async sendMail(message) {
        await transport.sendMail(envelope(options.from, message));
      },
      close: () => transport.close(),
    };
  }
  const folder = join(options.dataDir, 'mail');
  const transport = createTransport({ streamTransport: true, buffer: true, newline: 'windows' });
  return {
    async sendMail(message) {
      const { message: content } = await transport.sendMail(envelope(options.from, message));
      await mkdir(folder, { recursive: true, mode: 0o700 });
      const name = `${new Date().toISOString().replace(/[:.]/g, '-')}-${randomUUID().slice(0, 8)}.eml`;
      // Written beside and renamed, so that whoever watches the folder never reads half a message.
      const partial = join(folder, `.${name}`);
      await writeFile(partial, content);
      await rename(partial, join(folder, name));
    },
    close: () => transport.close(),
  };
}

function envelope(from: string, message: MailMessage) {
  return {
    from,
    to: message.to,
    subject: message.subject,
    text: message.text,
    html: message.html,
    messageId: `<${message.messageId}>`,
    // Content never comes from a path or an address: what is mailed was built by the caller.
    disableFileAccess: true,
    disableUrlAccess: true,
  };
}
