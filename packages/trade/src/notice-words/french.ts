import type { NoticeWords } from './sayable.ts';

const many = (count: number, one: string, more: string) => `${count} ${count < 2 ? one : more}`;

const reportNames: Record<string, string> = {
  full: 'Rapport',
  recommendations: 'Liste des recommandations',
  summary: 'Résumé',
  'clearance-letter': 'Lettre de levée des recommandations',
  'status-letter': 'Lettre de situation',
  're-inspection': 'Rapport de contre-visite',
};

export const french: NoticeWords = {
  sentences: {
    'party.added': (s) => `${s.firm} vous invite à suivre cette expertise.`,
    'party.released': () => 'Les documents de cette expertise vous sont désormais ouverts.',
    'party.release-withdrawn': () => 'Les documents de cette expertise ne vous sont plus ouverts.',
    'report.issued': (s) =>
      `Document remis : ${reportNames[s.of('kind')] ?? s.of('label')}, révision ${s.of('revision')}.`,
    'finding.withdrawn': (s) => `L’expert a retiré le constat ${s.finding} : ${s.of('reason')}`,
    'evidence.sent': (s) =>
      `${s.actor} a envoyé un justificatif pour le constat ${s.finding} : ${s.of('statement')}`,
    'evidence.returned': (s) =>
      `${s.actor} a renvoyé le justificatif du constat ${s.finding} : ${s.of('reason')}`,
    'evidence.accepted': (s) =>
      `${s.actor} a accepté le justificatif du constat ${s.finding}, qui est levé.${s.of('reason') && ` ${s.of('reason')}`}`,
    'evidence.accepted-as-is': (s) =>
      `${s.actor} a accepté le constat ${s.finding} en l’état${s.of('limitUntil') && `, jusqu’au ${s.day('limitUntil')}`} : ${s.of('limit') || s.of('reason')}`,
    'evidence.part-accepted': (s) =>
      `${s.actor} a accepté une partie du justificatif du constat ${s.finding} : ${s.of('reason')}`,
    'finding.extended': (s) =>
      `${s.actor} a prolongé le délai du constat ${s.finding} jusqu’au ${s.day('dueOn')} : ${s.of('reason')}`,
    'finding.limit-ended': (s) =>
      `La limite dans laquelle le constat ${s.finding} était accepté en l’état est passée. Il est de nouveau ouvert.`,
    'finding.due-soon': (s) =>
      `Échéance du constat ${s.finding} le ${s.day('dueOn')}, dans ${many(s.count('days'), 'jour', 'jours')}.`,
    'survey.overdue': (s) =>
      `${many(s.count('count'), 'recommandation est en retard', 'recommandations sont en retard')}, la plus ancienne depuis le ${s.day('since')}.`,
    'survey.re-inspected': (s) =>
      `${s.actor} a revu le bateau le ${s.day('date')} : ${many(s.count('count'), 'constat', 'constats')}.`,
    'comment.added': (s) => `${s.actor} a commenté le constat ${s.finding}.`,
    'review.asked': (s) => `${s.actor} vous demande de relire le dossier.`,
    'review.approved': (s) => `${s.actor} a approuvé le dossier.`,
    'review.sent-back': (s) => `${s.actor} a renvoyé le dossier : ${s.of('reason')}`,
  },
  finding: (number, title) => `${number}, « ${title} »`,
  about: (vessel, survey) => `${vessel}, expertise ${survey}`,
  subjectOfMany: (count) => `${count} nouvelles de Garboard`,
  greeting: (name) => `Bonjour ${name},`,
  opening: (count) => `Voici ce qui s’est passé depuis notre dernier message (${count}) :`,
  readOne: 'À lire dans Garboard, une fois connecté :',
  readAll: 'Tout peut être lu dans Garboard, une fois connecté :',
  settings: 'Vous choisissez ce qui vous est écrit, et à quel rythme :',
};
