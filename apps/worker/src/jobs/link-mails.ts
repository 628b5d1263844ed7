import { linkMinutes } from '@garboard/contract/limits';
import { mailPage } from './mail-page.ts';

interface Words {
  subject: string;
  opening: string;
  asking: string;
  closing: string;
}

const invitation: Words = {
  subject: 'Your invitation to Garboard',
  opening: 'A marine survey firm has invited you to Garboard, where its surveys can be read and followed up.',
  asking: 'Open this link to sign in for the first time:',
  closing: `The link works once, within ${linkMinutes} minutes. If it has run out, open it all the same: you can have a new one sent from there. If you did not expect this message, you need do nothing.`,
};

const signIn: Words = {
  subject: 'Your link to sign in to Garboard',
  opening: 'Somebody, most likely you, asked for a link to sign in to Garboard.',
  asking: 'Open this link to sign in:',
  closing: `The link works once, within ${linkMinutes} minutes, and only for your account. If you did not ask for it, you need do nothing: nobody can sign in without this message. Do not pass it on.`,
};

/** The mail that carries a one-time link. @param address the link */
export function linkMail(
  kind: 'invitation' | 'sign-in',
  address: string,
): { subject: string; text: string; html: string } {
  const { subject, opening, asking, closing } = kind === 'invitation' ? invitation : signIn;
  return {
    subject,
    text: `${opening}\n\n${asking}\n${address}\n\n${closing}\n`,
    html: mailPage({ title: subject, paragraphs: [opening], asking, address, closing }),
  };
}
