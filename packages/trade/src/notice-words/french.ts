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
      `${s.actor} a accepté le justificatif du constat ${s.finding}${s.of('left') ? '. D’autres points restent à lever.' : ', qui est levé.'}${s.of('reason') && ` ${s.of('reason')}`}`,
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
    'finding.overdue': (s) =>
      `Le constat ${s.finding} devait être levé le ${s.day('dueOn')} et reste ouvert.`,
    'survey.overdue': (s) =>
      `${many(s.count('count'), 'recommandation est en retard', 'recommandations sont en retard')}, la plus ancienne depuis le ${s.day('since')}.`,
    'survey.re-inspected': (s) =>
      `${s.actor} a revu le bateau le ${s.day('date')} : ${many(s.count('count'), 'constat', 'constats')}.`,
    'comment.added': (s) => `${s.actor} a commenté le constat ${s.finding}.`,
    'quotation.sent': (s) =>
      `${s.firm} vous a envoyé un devis de ${s.of('total')} et ses conditions, à lire puis à accepter ou à refuser.`,
    'quotation.accepted': (s) => `${s.of('typedName')} a accepté le devis de ${s.of('total')}.`,
    'quotation.declined': (s) => `${s.actor} a refusé le devis : ${s.of('reason')}`,
    'quotation.withdrawn': (s) => `${s.firm} a retiré son devis : ${s.of('reason')}`,
    'visit.arranged': (s) => `Vous êtes attendu à une visite : ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.moved': (s) => `Une visite a été déplacée : ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.changed': (s) => `Du nouveau sur la visite du ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.cancelled': (s) => `La visite du ${s.time('startsAt')} est annulée : ${s.of('reason')}`,
    'visit.answered': (s) => `${s.of('name')} a répondu pour la visite du ${s.time('startsAt')}.`,
    'invoice.sent': (s) => `${s.firm} a envoyé la facture ${s.of('number')} de ${s.of('total')}.`,
    'report.handed-over': () => 'Les documents remis pour cette expertise vous sont maintenant ouverts.',
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
