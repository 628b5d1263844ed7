import type { Language } from '../languages.ts';
import type { NoticeKind } from '../notice-kinds.ts';

/** What the sentence of a notice is made of. */
export interface NoticeFacts {
  firm: string;
  /** Who did it. */
  actor: string;
  vessel: string | null;
  survey: string | null;
  /** Of the survey: times are told in it to whoever has chosen none. */
  timeZone: string;
  finding: { number: number; title: string; dueOn: string | null } | null;
  data: Record<string, unknown>;
}

/** The facts as sentences take them: nothing is missing, days are written out. */
export interface Sayable {
  firm: string;
  actor: string;
  /** Boat and number of the survey, or the firm when there is none. */
  about: string;
  /** Such as `4, “Gas hose perished”`, quoted as the language does; empty without a finding. */
  finding: string;
  dueOn: string;
  /** A value of the event, as text; empty when it has none. */
  of(key: string): string;
  /** A calendar day of the event, written out; empty when it has none. */
  day(key: string): string;
  count(key: string): number;
  /** An instant of the event with its hour, where the boat lies; empty when it has none. */
  time(key: string): string;
}

export type Sentences = Record<NoticeKind, (s: Sayable) => string>;

/** Everything that mail says in one language. */
export interface NoticeWords {
  sentences: Sentences;
  /** How a finding is called: its number and its title, quoted. */
  finding(number: number, title: string): string;
  about(vessel: string, survey: string): string;
  subjectOfMany(count: number): string;
  greeting(name: string): string;
  /** Before several things told at once. */
  opening(count: number): string;
  readOne: string;
  readAll: string;
  settings: string;
}

/** The sentences' material in one language. */
export function sayable(facts: NoticeFacts, words: NoticeWords, language: Language): Sayable {
  const of = (key: string) => (facts.data[key] == null ? '' : String(facts.data[key]));
  const written = (day: string) => (/^\d{4}-\d\d-\d\d$/.test(day) ? longDay(day, language) : day);
  return {
    firm: facts.firm,
    actor: facts.actor,
    about:
      facts.vessel === null || facts.survey === null ? facts.firm : words.about(facts.vessel, facts.survey),
    finding: facts.finding ? words.finding(facts.finding.number, facts.finding.title) : '',
    dueOn: written(facts.finding?.dueOn ?? ''),
    of,
    day: (key) => written(of(key)),
    count: (key) => Number(facts.data[key] ?? 0),
    time: (key) => (of(key) === '' ? '' : timeThere(of(key), facts.timeZone, language)),
  };
}

/** An instant where the boat lies, since that is where the visit is: 4 May 2026, 09:00. */
const timeThere = (instant: string, timeZone: string, language: Language): string =>
  new Intl.DateTimeFormat(language, {
    ...{ year: 'numeric', month: 'long', day: 'numeric', hour: '2-digit', minute: '2-digit', timeZone },
  }).format(new Date(instant));

/** A calendar day as the language writes it: 4 May 2026, May 4, 2026, 4. Mai 2026. */
export const longDay = (day: string, language: Language): string =>
  new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  );
