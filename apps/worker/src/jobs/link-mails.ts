import { linkMinutes } from '@garboard/contract/limits';
import { languageOf } from '@garboard/trade/languages';
import { linkWords } from '@garboard/trade/link-words';
import { mailPage } from './mail-page.ts';

/** The mail that carries a one-time link, in its person's language. */
export function linkMail({
  kind,
  address,
  language: kept,
}: {
  kind: 'invitation' | 'sign-in';
  /** The link. */
  address: string;
  language: string;
}): { subject: string; text: string; html: string } {
  const language = languageOf(kept);
  const { subject, opening, asking, closing } = linkWords[language][kind](linkMinutes);
  return {
    subject,
    text: `${opening}\n\n${asking}\n${address}\n\n${closing}\n`,
    html: mailPage({ language, title: subject, paragraphs: [opening], asking, address, closing }),
  };
}
