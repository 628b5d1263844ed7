import { mailPage } from './mail-page.ts';

/** The words of an invitation. @param address the one-time link; @param expiresAt until when it works */
export function invitationMail(
  address: string,
  expiresAt: Date,
): { subject: string; text: string; html: string } {
  const until = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(expiresAt);
  const opening =
    'A marine survey firm has invited you to Garboard, where its surveys can be read and followed up.';
  const asking = 'Open this link to choose a password and sign in:';
  const closing = `The link works once, until ${until}. If you did not expect this message, you need do nothing.`;
  const subject = 'Your invitation to Garboard';
  return {
    subject,
    text: `${opening}\n\n${asking}\n${address}\n\n${closing}\n`,
    html: mailPage({ title: subject, paragraphs: [opening], asking, address, closing }),
  };
}
