import type { NoticeWords } from './sayable.ts';

const many = (count: number, one: string, more: string) => (count === 1 ? `1 ${one}` : `${count} ${more}`);

const reportNames: Record<string, string> = {
  full: 'Informe',
  recommendations: 'Lista de recomendaciones',
  summary: 'Resumen',
  'clearance-letter': 'Carta de cumplimiento',
  'status-letter': 'Carta de situación',
  're-inspection': 'Informe de nueva inspección',
};

export const spanish: NoticeWords = {
  sentences: {
    'party.added': (s) => `${s.firm} le ha invitado a seguir esta inspección.`,
    'party.released': () => 'Ya puede ver los documentos de esta inspección.',
    'party.release-withdrawn': () => 'Los documentos de esta inspección ya no están abiertos para usted.',
    'report.issued': (s) =>
      `Documento emitido: ${reportNames[s.of('kind')] ?? s.of('label')}, revisión ${s.of('revision')}.`,
    'finding.withdrawn': (s) => `El inspector ha retirado el defecto ${s.finding}: ${s.of('reason')}`,
    'evidence.sent': (s) =>
      `${s.actor} ha enviado un justificante del defecto ${s.finding}: ${s.of('statement')}`,
    'evidence.returned': (s) =>
      `${s.actor} ha devuelto el justificante del defecto ${s.finding}: ${s.of('reason')}`,
    'evidence.accepted': (s) =>
      `${s.actor} ha aceptado el justificante del defecto ${s.finding}${s.of('left') ? '. Quedan otros puntos por resolver.' : ', que queda resuelto.'}${s.of('reason') && ` ${s.of('reason')}`}`,
    'evidence.accepted-as-is': (s) =>
      `${s.actor} ha aceptado el defecto ${s.finding} tal como está${s.of('limitUntil') && `, hasta el ${s.day('limitUntil')}`}: ${s.of('limit') || s.of('reason')}`,
    'evidence.part-accepted': (s) =>
      `${s.actor} ha aceptado una parte del justificante del defecto ${s.finding}: ${s.of('reason')}`,
    'finding.extended': (s) =>
      `${s.actor} ha ampliado el plazo del defecto ${s.finding} hasta el ${s.day('dueOn')}: ${s.of('reason')}`,
    'finding.limit-ended': (s) =>
      `Ha terminado el límite en que el defecto ${s.finding} se aceptaba tal como está. Vuelve a estar abierto.`,
    'finding.due-soon': (s) =>
      `El defecto ${s.finding} vence el ${s.day('dueOn')}, dentro de ${many(s.count('days'), 'día', 'días')}.`,
    'finding.overdue': (s) => `El defecto ${s.finding} venció el ${s.day('dueOn')} y sigue abierto.`,
    'survey.overdue': (s) =>
      `${many(s.count('count'), 'recomendación vencida', 'recomendaciones vencidas')}, la más antigua desde el ${s.day('since')}.`,
    'survey.re-inspected': (s) =>
      `${s.actor} volvió a ver el barco el ${s.day('date')}: ${many(s.count('count'), 'defecto', 'defectos')}.`,
    'comment.added': (s) => `${s.actor} ha comentado el defecto ${s.finding}.`,
    'quotation.sent': (s) =>
      `${s.firm} le ha enviado un presupuesto de ${s.of('total')} con sus condiciones, para leerlo y aceptarlo o rechazarlo.`,
    'quotation.accepted': (s) => `${s.of('typedName')} ha aceptado el presupuesto de ${s.of('total')}.`,
    'quotation.declined': (s) => `${s.actor} ha rechazado el presupuesto: ${s.of('reason')}`,
    'quotation.withdrawn': (s) => `${s.firm} ha retirado su presupuesto: ${s.of('reason')}`,
    'visit.arranged': (s) => `Se le pide que acuda a una visita: ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.moved': (s) => `Se ha cambiado una visita: ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.changed': (s) => `Hay novedades de la visita del ${s.time('startsAt')}, ${s.of('place')}.`,
    'visit.cancelled': (s) => `Se ha cancelado la visita del ${s.time('startsAt')}: ${s.of('reason')}`,
    'visit.answered': (s) => `${s.of('name')} ha contestado sobre la visita del ${s.time('startsAt')}.`,
    'invoice.sent': (s) => `${s.firm} ha enviado la factura ${s.of('number')} de ${s.of('total')}.`,
    'report.handed-over': () => 'Ya puede ver lo que se ha emitido de esta inspección.',
    'review.asked': (s) => `${s.actor} le pide que revise el expediente.`,
    'review.approved': (s) => `${s.actor} ha aprobado el expediente.`,
    'review.sent-back': (s) => `${s.actor} ha devuelto el expediente: ${s.of('reason')}`,
  },
  finding: (number, title) => `${number}, «${title}»`,
  about: (vessel, survey) => `${vessel}, inspección ${survey}`,
  subjectOfMany: (count) => `${count} novedades de Garboard`,
  greeting: (name) => `Hola, ${name}:`,
  opening: (count) => `Esto ha ocurrido desde nuestro último mensaje (${count}):`,
  readOne: 'Puede leerlo en Garboard después de entrar:',
  readAll: 'Puede leerlo todo en Garboard después de entrar:',
  settings: 'Usted elige qué se le escribe y con qué frecuencia:',
};
