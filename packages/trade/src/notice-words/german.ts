import type { NoticeWords } from './sayable.ts';

const many = (count: number, one: string, more: string) => (count === 1 ? `1 ${one}` : `${count} ${more}`);

const reportNames: Record<string, string> = {
  full: 'Gutachten',
  recommendations: 'Liste der Empfehlungen',
  summary: 'Zusammenfassung',
  'clearance-letter': 'Bestätigung der Erledigung',
  'status-letter': 'Schreiben zum Stand',
  're-inspection': 'Bericht der Nachbesichtigung',
};

export const german: NoticeWords = {
  sentences: {
    'party.added': (s) => `${s.firm} hat Sie zu dieser Besichtigung eingeladen.`,
    'party.released': () => 'Was zu dieser Besichtigung herausgegeben wurde, ist für Sie freigegeben.',
    'party.release-withdrawn': () =>
      'Was zu dieser Besichtigung herausgegeben wurde, ist für Sie nicht mehr freigegeben.',
    'report.issued': (s) =>
      `${reportNames[s.of('kind')] ?? s.of('label')} herausgegeben, Fassung ${s.of('revision')}.`,
    'finding.withdrawn': (s) =>
      `Der Sachverständige hat Mangel ${s.finding} zurückgezogen: ${s.of('reason')}`,
    'evidence.sent': (s) =>
      `${s.actor} hat einen Nachweis zu Mangel ${s.finding} gesandt: ${s.of('statement')}`,
    'evidence.returned': (s) =>
      `${s.actor} hat den Nachweis zu Mangel ${s.finding} zurückgegeben: ${s.of('reason')}`,
    'evidence.accepted': (s) =>
      `${s.actor} hat den Nachweis zu Mangel ${s.finding} anerkannt. ${s.of('left') ? 'Andere Punkte sind noch offen.' : 'Er ist erledigt.'}${s.of('reason') && ` ${s.of('reason')}`}`,
    'evidence.accepted-as-is': (s) =>
      `${s.actor} nimmt Mangel ${s.finding} hin, wie er ist${s.of('limitUntil') && `, bis ${s.day('limitUntil')}`}: ${s.of('limit') || s.of('reason')}`,
    'evidence.part-accepted': (s) =>
      `${s.actor} hat einen Teil des Nachweises zu Mangel ${s.finding} anerkannt: ${s.of('reason')}`,
    'finding.extended': (s) =>
      `${s.actor} hat die Frist für Mangel ${s.finding} bis ${s.day('dueOn')} verlängert: ${s.of('reason')}`,
    'finding.limit-ended': (s) =>
      `Die Grenze, in der Mangel ${s.finding} hingenommen war, ist abgelaufen. Er ist wieder offen.`,
    'finding.due-soon': (s) =>
      `Mangel ${s.finding} ist am ${s.day('dueOn')} fällig, in ${many(s.count('days'), 'Tag', 'Tagen')}.`,
    'finding.overdue': (s) => `Mangel ${s.finding} war am ${s.day('dueOn')} fällig und ist noch offen.`,
    'survey.overdue': (s) =>
      `${many(s.count('count'), 'Empfehlung ist', 'Empfehlungen sind')} überfällig, die älteste seit ${s.day('since')}.`,
    'survey.re-inspected': (s) =>
      `${s.actor} hat das Boot am ${s.day('date')} nachbesichtigt: ${many(s.count('count'), 'Mangel', 'Mängel')}.`,
    'comment.added': (s) => `${s.actor} hat Mangel ${s.finding} kommentiert.`,
    'quotation.sent': (s) =>
      `${s.firm} hat Ihnen ein Angebot über ${s.of('total')} mit seinen Bedingungen gesandt. Bitte lesen Sie es und nehmen Sie es an oder lehnen Sie es ab.`,
    'quotation.accepted': (s) => `${s.of('typedName')} hat das Angebot über ${s.of('total')} angenommen.`,
    'quotation.declined': (s) => `${s.actor} hat das Angebot abgelehnt: ${s.of('reason')}`,
    'quotation.withdrawn': (s) => `${s.firm} hat sein Angebot zurückgezogen: ${s.of('reason')}`,
    'visit.arranged': (s) => `Sie werden zu einem Termin gebeten: ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.moved': (s) => `Ein Termin wurde verlegt: ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.changed': (s) => `Zum Termin ${s.time('startsAt')}, ${s.of('place')}, gibt es Neues.`,
    'visit.cancelled': (s) => `Der Termin ${s.time('startsAt')} ist abgesagt: ${s.of('reason')}`,
    'visit.answered': (s) => `${s.of('name')} hat zum Termin ${s.time('startsAt')} geantwortet.`,
    'invoice.sent': (s) => `${s.firm} hat die Rechnung ${s.of('number')} über ${s.of('total')} gesandt.`,
    'report.handed-over': () => 'Was zu dieser Besichtigung herausgegeben wurde, steht Ihnen jetzt offen.',
    'review.asked': (s) => `${s.actor} bittet Sie, die Aufzeichnung durchzusehen.`,
    'review.approved': (s) => `${s.actor} hat die Aufzeichnung gebilligt.`,
    'review.sent-back': (s) => `${s.actor} hat die Aufzeichnung zurückgegeben: ${s.of('reason')}`,
  },
  finding: (number, title) => `${number}, „${title}“`,
  about: (vessel, survey) => `${vessel}, Besichtigung ${survey}`,
  subjectOfMany: (count) => `${count} Nachrichten von Garboard`,
  greeting: (name) => `Guten Tag, ${name}!`,
  opening: (count) => `Das ist seit unserem letzten Schreiben geschehen (${count}):`,
  readOne: 'Nach dem Anmelden können Sie es in Garboard lesen:',
  readAll: 'Nach dem Anmelden können Sie alles in Garboard lesen:',
  settings: 'Sie bestimmen, was Ihnen geschrieben wird und wie oft:',
};
