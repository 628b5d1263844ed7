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
  /** Where whoever gets it says what they want to be mailed (RFC 2369). */
  settingsUrl?: string;
}

export interface Mailer {
  /**
   * Sends one message.
   * @throws MailRefusedError when the mail server will never take it; Error when it may do so later or is away.
   */
  sendMail(message: MailMessage): Promise<void>;
  close(): void;
}

/** The mail server refused a message for good (5xx). */
export class MailRefusedError extends Error {
  override name = 'MailRefusedError';
  /** Whether it is the address that gets no mail, rather than this message. */
  readonly address: boolean;
  constructor(answer: string, address: boolean) {
    super(answer);
    this.address = address;
  }
}

// Long enough for a server that looks names up before it greets, short enough not to hold up other errands.
const timeouts = { connectionTimeout: 20_000, greetingTimeout: 30_000, socketTimeout: 60_000 };

/**
 * Opens the way mail leaves: the server at `smtpUrl`, else one `.eml` file a message in `$DATA_DIR/mail`,
 * named so that they sort by time.
 * @param from the sender's address, such as `Name <name@host>`.
 */
export function openMailer(options: { smtpUrl?: string; dataDir: string; from: string }): Mailer {
  if (options.smtpUrl) {
    const transport = createTransport({
      url: options.smtpUrl,
      ...timeouts,
      requireTLS: mustEncrypt(options.smtpUrl),
    });
    return {
      async sendMail(message) {
        await transport.sendMail(envelope(options.from, message)).catch((error: unknown) => {
          throw refusalOf(error) ?? error;
        });
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

/**
 * A password goes to no server that won't encrypt, whoever stands between and hides that it can; on this machine nobody
 * does. `?requireTLS=false` in the address overrules it. Certificates are verified whenever there is encryption.
 */
const mustEncrypt = (smtpUrl: string): boolean => {
  const { password, hostname } = new URL(smtpUrl);
  return password !== '' && !/^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(hostname);
};

/**
 * What nodemailer tells of a server's answer. A 5xx to the greeting, the sign-in or the sender's address is about
 * ourselves: an operator mends that, and the message goes then.
 */
function refusalOf(error: unknown): MailRefusedError | null {
  const { responseCode = 0, response = '', command = '' } = error as Partial<SmtpError>;
  if (responseCode < 500 || responseCode > 599) return null;
  if (command !== 'RCPT TO' && command !== 'DATA') return null;
  // RFC 3463: x.1 is about the address, x.2 about the mailbox; x.7 about policy, which is the sender's.
  const subject = /^5\d\d[ -]5\.(\d+)\./.exec(response)?.[1];
  const address = subject ? subject === '1' || subject === '2' : command === 'RCPT TO';
  return new MailRefusedError(response.slice(0, 300), address);
}

interface SmtpError {
  responseCode: number;
  response: string;
  command: string;
}

function envelope(from: string, message: MailMessage) {
  const { to, subject, text, html, settingsUrl } = message;
  return {
    from,
    to,
    subject,
    text,
    html,
    messageId: `<${message.messageId}>`,
    // RFC 3834: nobody's holiday reply is wanted.
    headers: { 'Auto-Submitted': 'auto-generated' },
    ...(settingsUrl ? { list: { unsubscribe: { url: settingsUrl, comment: 'Mail settings' } } } : {}),
    // Content never comes from a path or an address: what is mailed was built by the caller.
    disableFileAccess: true,
    disableUrlAccess: true,
  };
}
