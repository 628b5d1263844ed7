const escapeHtml = (text: string): string =>
  text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);

/** A mail as a plain page: paragraphs, then a link. Everything given is shown as text. */
export function mailPage(mail: {
  title: string;
  paragraphs: readonly string[];
  /** What the link is for. */
  asking: string;
  address: string;
  closing?: string;
}): string {
  const link = escapeHtml(mail.address);
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    `<title>${escapeHtml(mail.title)}</title></head>`,
    '<body style="margin:0;padding:24px;background:#faf8f4;color:#16202e;font:16px/1.5 sans-serif">',
    ...mail.paragraphs.map((text) => `<p style="white-space:pre-line">${escapeHtml(text)}</p>`),
    `<p>${escapeHtml(mail.asking)}<br><a href="${link}" style="color:#16202e">${link}</a></p>`,
    ...(mail.closing ? [`<p>${escapeHtml(mail.closing)}</p>`] : []),
    '</body></html>',
  ].join('\n');
}
