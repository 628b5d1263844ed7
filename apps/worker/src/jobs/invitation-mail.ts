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
  const link = escapeHtml(address);
  return {
    subject,
    text: `${opening}\n\n${asking}\n${address}\n\n${closing}\n`,
    html: [
      '<!doctype html><html lang="en"><head><meta charset="utf-8">',
      `<title>${subject}</title></head>`,
      '<body style="margin:0;padding:24px;background:#faf8f4;color:#16202e;font:16px/1.5 sans-serif">',
      `<p>${opening}</p><p>${asking}<br><a href="${link}" style="color:#16202e">${link}</a></p><p>${closing}</p>`,
      '</body></html>',
    ].join('\n'),
  };
}

const escapeHtml = (text: string): string =>
  text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
