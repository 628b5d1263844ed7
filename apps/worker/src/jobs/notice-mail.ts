import type { MailContents } from '@garboard/core/notices/mail-contents';
import { type Language, languageOf } from '@garboard/trade/languages';
import { noticeText, wordsOf } from '@garboard/trade/notice-words/words-of';
import { mailPage } from './mail-page.ts';

/**
 * The words of a message in its person's language: one thing, or several under what they are about.
 * @param publicUrl address of the installation, without a slash at its end
 */
export function noticeMail(
  { person, notices }: MailContents,
  publicUrl: string,
): { subject: string; text: string; html: string } {
  const language = languageOf(person.language);
  const words = wordsOf[language];
  const told = notices.map((notice) => ({
    ...noticeText(notice, language),
    at: writtenTime(notice.at, person.timeZone ?? notice.facts.timeZone, language),
    address: `${publicUrl}${notice.path}`,
  }));
  const [first] = told;
  const alone = first && told.length === 1 ? first : null;
  const subject = (
    alone ? `${alone.about}: ${shortened(alone.sentence)}` : words.subjectOfMany(told.length)
  ).replace(/\s+/g, ' ');
  const greeting = words.greeting(person.name);
  const opening = alone ? [] : [words.opening(told.length)];
  const asking = alone ? words.readOne : words.readAll;
  const address = alone ? alone.address : `${publicUrl}/notices`;
  const settings = { text: words.settings, address: `${publicUrl}/notices/settings` };
  return {
    subject,
    text: [
      greeting,
      ...opening,
      ...told.map((t) => [t.about, t.sentence, t.at, ...(alone ? [] : [t.address])].join('\n')),
      `${asking}\n${address}`,
      `${settings.text}\n${settings.address}\n`,
    ].join('\n\n'),
    html: mailPage({
      language,
      title: subject,
      paragraphs: [greeting, ...opening],
      entries: told.map((t) => ({
        heading: t.about,
        text: t.sentence,
        note: t.at,
        ...(alone ? {} : { address: t.address }),
      })),
      asking,
      address,
      settings,
    }),
  };
}

/** A moment as the language writes it, in this time zone, with the zone’s name. */
const writtenTime = (at: Date, timeZone: string, language: Language): string =>
  new Intl.DateTimeFormat(language, {
    ...{ day: 'numeric', month: 'long', year: 'numeric', hour: '2-digit', minute: '2-digit' },
    ...{ timeZone, timeZoneName: 'short' },
  }).format(at);

function shortened(text: string): string {
  const letters = [...text];
  return letters.length <= 90 ? text : `${letters.slice(0, 89).join('')}…`;
}
