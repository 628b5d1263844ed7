const escapeHtml = (text: string): string =>
  text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);

/** A mail as a plain page. Everything given is shown as text. */
export interface MailPage {
  /** IETF tag of its words; English when left out. */
  language?: string;
  title: string;
  paragraphs: readonly string[];
  /** Several things told one by one, each where it is read. */
  entries?: readonly { heading: string; text: string; note: string; address?: string }[];
  /** What the link is for. */
  asking: string;
  address: string;
  closing?: string;
  /** What is said of mail as such, and where it is chosen. */
  settings?: { text: string; address: string };
}

const ink = '#16202e';
const quiet = '#4d5666';
const line = '#d9d4c9';

/** The page, after its opening paragraphs the entries between hairlines, then the link and what closes it. */
export function mailPage(mail: MailPage): string {
  const { language = 'en', entries = [] } = mail;
  return [
    `<!doctype html><html lang="${escapeHtml(language)}"><head><meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width">',
    `<title>${escapeHtml(mail.title)}</title></head>`,
    `<body style="margin:0;padding:24px;background:#faf8f4;color:${ink};font:16px/1.5 sans-serif">`,
    '<div style="max-width:36em">',
    ...mail.paragraphs.map((text) => `<p style="white-space:pre-line">${escapeHtml(text)}</p>`),
    ...entries.map(entry),
    `<p>${escapeHtml(mail.asking)}<br>${link(mail.address)}</p>`,
    ...(mail.closing ? [`<p>${escapeHtml(mail.closing)}</p>`] : []),
    ...(mail.settings
      ? [
          `<p style="margin-top:32px;padding-top:12px;border-top:1px solid ${line};color:${quiet};font-size:14px">`,
          `${escapeHtml(mail.settings.text)}<br>${link(mail.settings.address)}</p>`,
        ]
      : []),
    '</div></body></html>',
  ].join('\n');
}

function entry({ heading, text, note, address }: NonNullable<MailPage['entries']>[number]): string {
  return [
    `<div style="padding:12px 0;border-top:1px solid ${line}">`,
    `<strong>${escapeHtml(heading)}</strong>`,
    `<br><span style="white-space:pre-line">${escapeHtml(text)}</span>`,
    `<br><span style="color:${quiet};font-size:14px">${escapeHtml(note)}</span>`,
    ...(address ? [`<br>${link(address)}`] : []),
    '</div>',
  ].join('');
}

const link = (address: string): string =>
  `<a href="${escapeHtml(address)}" style="color:${ink};word-break:break-word">${escapeHtml(address)}</a>`;
