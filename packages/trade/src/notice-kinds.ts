import type { EventKind } from './event-words.ts';

/** What people choose about: how they are told of each. */
export const noticeTopics = [
  'access',
  'reports',
  'evidence',
  'decisions',
  'comments',
  'due-dates',
  'overdue',
  'reviews',
  'engagement',
] as const;
export type NoticeTopic = (typeof noticeTopics)[number];

/** At once, with the next daily or weekly digest, or only in the portal's own list. */
export const noticeWays = ['at-once', 'daily', 'weekly', 'portal-only'] as const;
export type NoticeWay = (typeof noticeWays)[number];

/** The ways among which people choose for a topic; the first is the usual one. What is overdue is told weekly. */
export const waysOf = (topic: NoticeTopic): readonly NoticeWay[] =>
  topic === 'overdue' ? ['weekly', 'portal-only'] : ['at-once', 'daily', 'portal-only'];

/** How a person is told of a topic: as chosen, or the usual way. */
export function wayOf(topic: NoticeTopic, chosen: string | undefined): NoticeWay {
  const ways = waysOf(topic);
  return ways.find((way) => way === chosen) ?? ways[0] ?? 'portal-only';
}

/**
 * Who is told. Whoever did it isn't, and of parties only those who may see the survey by then.
 *
 * - `named`: those whom the use case names (`tell` of `recordEvent`), and nobody it doesn't.
 * - `released`: every party to whom the issued contents are released; a yard only of findings assigned to it.
 * - `owners`, `buyers`, `insurers`, `clients`: of these those released to; `clients` are who pay.
 * - `yards`: yards to which the finding is assigned.
 * - `deciders`: who decides on evidence: released insurers, or the firm's surveyor.
 * - `sender`: who sent the finding's newest evidence.
 * - `whose-move`: who has to act on the finding: its senders of evidence, or its deciders once evidence waits.
 * - `surveyor`: who signs the report, or the principals when nobody does yet.
 * - `principals`, `office`: of the firm.
 */
export type Audience =
  | 'named'
  | 'released'
  | 'owners'
  | 'buyers'
  | 'insurers'
  | 'clients'
  | 'yards'
  | 'deciders'
  | 'sender'
  | 'whose-move'
  | 'surveyor'
  | 'principals'
  | 'office';

export interface NoticeRule {
  topic: NoticeTopic;
  to: readonly Audience[];
  /** What one must still be allowed to see to be told: the firm's own affairs, the survey, or what was issued. */
  sight: 'staff' | 'survey' | 'issued';
  /** The page on which it is read. */
  page: 'survey' | 'finding' | 'review' | 'parties' | 'documents' | 'engagement';
  /** Mailed at once to whom it concerns at once, without waiting to be gathered with others. */
  urgent?: true;
  /** Says that somebody was invited; who has no account yet is mailed a link instead. */
  invites?: true;
}

/** Which events people are told of. An event that isn't here is history only. */
export const noticeKinds = {
  'party.added': {
    topic: 'access',
    to: ['named'],
    sight: 'survey',
    page: 'survey',
    urgent: true,
    invites: true,
  },
  'party.released': { topic: 'access', to: ['named'], sight: 'issued', page: 'survey' },
  'party.release-withdrawn': { topic: 'access', to: ['named'], sight: 'survey', page: 'survey' },
  'report.issued': { topic: 'reports', to: ['released'], sight: 'issued', page: 'survey' },
  'finding.withdrawn': { topic: 'reports', to: ['released'], sight: 'issued', page: 'finding' },
  'evidence.sent': { topic: 'evidence', to: ['deciders', 'surveyor'], sight: 'issued', page: 'finding' },
  'evidence.returned': {
    topic: 'decisions',
    to: ['sender', 'owners', 'yards', 'surveyor', 'insurers'],
    sight: 'issued',
    page: 'finding',
  },
  'evidence.accepted': {
    topic: 'decisions',
    to: ['sender', 'owners', 'yards', 'surveyor', 'insurers'],
    sight: 'issued',
    page: 'finding',
  },
  'evidence.accepted-as-is': {
    topic: 'decisions',
    to: ['sender', 'owners', 'yards', 'surveyor', 'insurers'],
    sight: 'issued',
    page: 'finding',
  },
  'evidence.part-accepted': {
    topic: 'decisions',
    to: ['sender', 'owners', 'yards', 'surveyor', 'insurers'],
    sight: 'issued',
    page: 'finding',
  },
  'finding.extended': {
    topic: 'due-dates',
    to: ['owners', 'yards', 'surveyor', 'insurers'],
    sight: 'issued',
    page: 'finding',
  },
  'finding.limit-ended': {
    topic: 'due-dates',
    to: ['owners', 'yards', 'surveyor', 'insurers'],
    sight: 'issued',
    page: 'finding',
  },
  'finding.due-soon': { topic: 'due-dates', to: ['whose-move'], sight: 'issued', page: 'finding' },
  'finding.overdue': { topic: 'overdue', to: ['yards'], sight: 'issued', page: 'finding' },
  'survey.overdue': {
    topic: 'overdue',
    to: ['owners', 'clients', 'insurers', 'surveyor'],
    sight: 'issued',
    page: 'survey',
  },
  'survey.re-inspected': { topic: 'decisions', to: ['released'], sight: 'issued', page: 'survey' },
  'comment.added': { topic: 'comments', to: ['named', 'surveyor'], sight: 'issued', page: 'finding' },
  'quotation.sent': { topic: 'engagement', to: ['named'], sight: 'survey', page: 'engagement', urgent: true },
  'quotation.accepted': {
    topic: 'engagement',
    to: ['surveyor', 'principals', 'office'],
    sight: 'staff',
    page: 'engagement',
  },
  'quotation.declined': {
    topic: 'engagement',
    to: ['surveyor', 'principals', 'office'],
    sight: 'staff',
    page: 'engagement',
  },
  'quotation.withdrawn': { topic: 'engagement', to: ['named'], sight: 'survey', page: 'engagement' },
  'visit.arranged': { topic: 'engagement', to: ['named'], sight: 'survey', page: 'engagement', urgent: true },
  'visit.moved': { topic: 'engagement', to: ['named'], sight: 'survey', page: 'engagement', urgent: true },
  'visit.changed': { topic: 'engagement', to: ['named'], sight: 'survey', page: 'engagement' },
  'visit.cancelled': {
    topic: 'engagement',
    to: ['named'],
    sight: 'survey',
    page: 'engagement',
    urgent: true,
  },
  'visit.answered': { topic: 'engagement', to: ['surveyor', 'office'], sight: 'staff', page: 'engagement' },
  'invoice.sent': { topic: 'engagement', to: ['named'], sight: 'survey', page: 'engagement' },
  'report.handed-over': { topic: 'reports', to: ['named'], sight: 'issued', page: 'survey' },
  'review.asked': { topic: 'reviews', to: ['named'], sight: 'staff', page: 'review' },
  'review.approved': { topic: 'reviews', to: ['named'], sight: 'staff', page: 'review' },
  'review.sent-back': { topic: 'reviews', to: ['named'], sight: 'staff', page: 'review' },
} as const satisfies Partial<Record<EventKind, NoticeRule>>;

/** Kinds of events that people are told of. */
export type NoticeKind = keyof typeof noticeKinds;

/** How people are told of a kind of event; null when they aren't. */
export const noticeRule = (kind: string): NoticeRule | null =>
  Object.hasOwn(noticeKinds, kind) ? noticeKinds[kind as NoticeKind] : null;

/** Whether an event has to be looked at by the worker once it is written. */
export const fansOut = (kind: EventKind): boolean => noticeRule(kind) !== null;
