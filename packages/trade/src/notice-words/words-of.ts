import type { Language } from '../languages.ts';
import type { NoticeKind } from '../notice-kinds.ts';
import { english } from './english.ts';
import { french } from './french.ts';
import { german } from './german.ts';
import { type NoticeFacts, type NoticeWords, sayable } from './sayable.ts';
import { spanish } from './spanish.ts';

/** What mail says in each language. American English differs in its dates only. */
export const wordsOf: Record<Language, NoticeWords> = {
  'en-GB': english,
  'en-US': english,
  de: german,
  fr: french,
  es: spanish,
};

/** What a notice says: what it is about, and a sentence. A kind of a newer version is shown by its name. */
export function noticeText(
  { kind, facts }: { kind: string; facts: NoticeFacts },
  language: Language,
): { about: string; sentence: string } {
  const words = wordsOf[language];
  const material = sayable(facts, words, language);
  const sentence = Object.hasOwn(words.sentences, kind)
    ? words.sentences[kind as NoticeKind](material)
    : kind;
  return { about: material.about, sentence };
}
