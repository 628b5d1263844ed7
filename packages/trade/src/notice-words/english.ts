import type { NoticeWords } from './sayable.ts';

const many = (count: number, one: string, more: string) => (count === 1 ? `1 ${one}` : `${count} ${more}`);

/** What a document is called, by its kind. */
const reportNames: Record<string, string> = {
  full: 'Report',
  recommendations: 'List of recommendations',
  summary: 'Summary',
  'clearance-letter': 'Clearance letter',
  'status-letter': 'Status letter',
  're-inspection': 'Re-inspection report',
};

export const english: NoticeWords = {
  sentences: {
    'party.added': (s) => `${s.firm} has invited you to this survey.`,
    'party.released': () => 'What was issued of this survey has been released to you.',
    'party.release-withdrawn': () => 'What was issued of this survey is no longer open to you.',
    'report.issued': (s) =>
      `${reportNames[s.of('kind')] ?? s.of('label')} issued, revision ${s.of('revision')}.`,
    'finding.withdrawn': (s) => `The surveyor withdrew finding ${s.finding}: ${s.of('reason')}`,
    'evidence.sent': (s) => `${s.actor} sent evidence on finding ${s.finding}: ${s.of('statement')}`,
    'evidence.returned': (s) => `${s.actor} returned the evidence on finding ${s.finding}: ${s.of('reason')}`,
    'evidence.accepted': (s) =>
      `${s.actor} accepted the evidence on finding ${s.finding}. ${s.of('left') ? 'Other items of it are left.' : 'It is cleared.'}${s.of('reason') && ` ${s.of('reason')}`}`,
    'evidence.accepted-as-is': (s) =>
      `${s.actor} accepted finding ${s.finding} as it is${s.of('limitUntil') && `, until ${s.day('limitUntil')}`}: ${s.of('limit') || s.of('reason')}`,
    'evidence.part-accepted': (s) =>
      `${s.actor} accepted a part of the evidence on finding ${s.finding}: ${s.of('reason')}`,
    'finding.extended': (s) =>
      `${s.actor} gave more time for finding ${s.finding}, until ${s.day('dueOn')}: ${s.of('reason')}`,
    'finding.limit-ended': (s) =>
      `The limit within which finding ${s.finding} was accepted as it is has ended. It is open again.`,
    'finding.due-soon': (s) =>
      `Finding ${s.finding} is due on ${s.day('dueOn')}, in ${many(s.count('days'), 'day', 'days')}.`,
    'finding.overdue': (s) => `Finding ${s.finding} was due on ${s.day('dueOn')} and is still open.`,
    'survey.overdue': (s) =>
      `${many(s.count('count'), 'recommendation is', 'recommendations are')} overdue, the oldest since ${s.day('since')}.`,
    'survey.re-inspected': (s) =>
      `${s.actor} looked at the boat again on ${s.day('date')}: ${many(s.count('count'), 'finding', 'findings')}.`,
    'comment.added': (s) => `${s.actor} commented on finding ${s.finding}.`,
    'quotation.sent': (s) =>
      `${s.firm} has sent you a quotation of ${s.of('total')}, with its terms, to read and to accept or decline.`,
    'quotation.accepted': (s) => `${s.of('typedName')} accepted the quotation of ${s.of('total')}.`,
    'quotation.declined': (s) => `${s.actor} declined the quotation: ${s.of('reason')}`,
    'quotation.withdrawn': (s) => `${s.firm} has withdrawn its quotation: ${s.of('reason')}`,
    'visit.arranged': (s) => `You are asked to a visit: ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.moved': (s) => `A visit you are asked to was moved: ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.changed': (s) => `There is news on the visit of ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.cancelled': (s) => `The visit of ${s.time('startsAt')} was called off: ${s.of('reason')}`,
    'visit.answered': (s) =>
      `${s.of('name')} answered for the visit of ${s.time('startsAt')}: ${s.of('answer')}.`,
    'invoice.sent': (s) => `${s.firm} has sent invoice ${s.of('number')} of ${s.of('total')}.`,
    'report.handed-over': () => 'What was issued of this survey is open to you now.',
    'review.asked': (s) => `${s.actor} asks you to review the record.`,
    'review.approved': (s) => `${s.actor} approved the record.`,
    'review.sent-back': (s) => `${s.actor} sent the record back: ${s.of('reason')}`,
  },
  finding: (number, title) => `${number}, “${title}”`,
  about: (vessel, survey) => `${vessel}, survey ${survey}`,
  subjectOfMany: (count) => `${count} things to know from Garboard`,
  greeting: (name) => `Dear ${name},`,
  opening: (count) => `This happened since we last wrote to you (${count}):`,
  readOne: 'Read it in Garboard after signing in:',
  readAll: 'All of it can be read in Garboard after signing in:',
  settings: 'You choose what is mailed to you, and how often:',
};
