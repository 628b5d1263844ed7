import type { MailContents, ToldNotice } from '@garboard/core/notices/mail-contents';
import { eventSummary } from '@garboard/trade/event-words';
import { mailPage } from './mail-page.ts';

/** The words of a message. @param publicUrl address of the installation, without a slash at its end */
export function noticeMail(
  { notices }: MailContents,
  publicUrl: string,
): { subject: string; text: string; html: string } {
  const told = notices.map((notice) => ({ ...notice, sentence: sentenceOf(notice), about: aboutOf(notice) }));
  const [first] = told;
  const subject = (
    first && told.length === 1
      ? `${first.about}: ${shortened(first.sentence)}`
      : `${told.length} notices from Garboard`
  ).replace(/\s+/g, ' ');
  const asking = 'You can read it here after signing in:';
  const address = `${publicUrl}${first && told.length === 1 ? first.path : '/notices'}`;
  const paragraphs = told.map(({ about, sentence }) => `${about}\n${sentence}`);
  const html = mailPage({ title: subject, paragraphs, asking, address });
  return { subject, text: `${paragraphs.join('\n\n')}\n\n${asking}\n${address}\n`, html };
}

const aboutOf = ({ facts }: ToldNotice): string =>
  facts.vessel ? `${facts.vessel}, survey ${facts.survey}` : facts.firm;

const sentenceOf = ({ kind, facts }: ToldNotice): string => eventSummary(kind, facts.data);

function shortened(text: string): string {
  const letters = [...text];
  return letters.length <= 90 ? text : `${letters.slice(0, 89).join('')}…`;
}
