import type { Notice } from '@garboard/core/events/notice-for';
import { mailPage } from './mail-page.ts';

/** The words of a notice. @param address where what it tells of can be read */
export function noticeMail(
  { about, sentence, firmName }: Notice,
  address: string,
): { subject: string; text: string; html: string } {
  const subject = `${about}: ${shortened(sentence)}`.replace(/\s+/g, ' ');
  const opening = `${firmName} has this to tell you of ${about}:`;
  const asking = 'You can read it here after signing in:';
  const html = mailPage({ title: subject, paragraphs: [opening, sentence], asking, address });
  return { subject, text: `${opening}\n\n${sentence}\n\n${asking}\n${address}\n`, html };
}

function shortened(text: string): string {
  const letters = [...text];
  return letters.length <= 90 ? text : `${letters.slice(0, 89).join('')}…`;
}
