/** A calendar day as people write it: 4 May 2026. */
const longDay = (day: string): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  );

/** A time where the boat lies: 4 May 2026, 09:00. */
const timeThere = (d: Record<string, string>): string =>
  new Intl.DateTimeFormat('en-GB', {
    dateStyle: 'long',
    timeStyle: 'short',
    timeZone: d.timeZone || 'UTC',
  })
    .format(new Date(d.startsAt ?? ''))
    .replace(' at ', ', ');

/** What can happen to a survey, and the sentence that its history shows. */
const words = {
  'survey.created': () => 'Survey opened',
  'survey.edited': () => 'Particulars of the survey changed',
  'survey.moved': (d) => `Survey moved to “${d.to}”`,
  'party.added': (d) => `${d.name} invited as ${d.role}`,
  'party.released': (d) => `Released to ${d.name} (${d.role})`,
  'party.release-withdrawn': (d) => `Release to ${d.name} (${d.role}) withdrawn`,
  'party.pays': (d) => `${d.name} (${d.role}) pays for the survey and says to whom it is released`,
  'party.pays-no-more': (d) => `${d.name} (${d.role}) no longer says to whom it is released`,
  'finding.yards-named': (d) =>
    d.names ? `To be put right by ${d.names}` : 'No yard is asked to put it right',
  'report.viewed': (d) => `${d.label} looked at, revision ${d.revision}`,
  'party.removed': (d) => `${d.name} (${d.role}) removed`,
  'photos.added': (d) => (d.count === '1' ? '1 photo added' : `${d.count} photos added`),
  'survey.brought-in': (d) =>
    `Brought in from ${d.fileName}: ${d.findings === '1' ? '1 finding' : `${d.findings} findings`}, ${d.photos === '1' ? '1 photo' : `${d.photos} photos`}`,
  'photo.deleted': (d) => `Photo ${d.fileName} deleted`,
  'finding.created': (d) => `Finding recorded: ${d.title}`,
  'finding.edited': (d) => `Finding edited: ${d.title}`,
  'finding.deleted': (d) => `Draft finding deleted: ${d.title}`,
  'finding.restored': (d) => `Deleted finding brought back: ${d.title}`,
  'finding.withdrawn': (d) =>
    d.reason ? `Finding withdrawn: ${d.title}. ${d.reason}` : `Finding withdrawn: ${d.title}`,
  'findings.ordered': () => 'Order of findings changed',
  'finding.issued': (d) => (d.dueOn ? `Issued, due by ${longDay(d.dueOn)}` : 'Issued'),
  'worksheet.created': (d) => `Worksheet kept: ${d.title}`,
  'worksheet.updated': (d) => `Worksheet edited: ${d.title}`,
  'worksheet.deleted': (d) => `Worksheet deleted: ${d.title}`,
  'coverage.answered': (d) => `Coverage of ${d.system}: ${d.reached}`,
  'coverage.replaced': (d) =>
    `Coverage answered anew for ${d.count === '1' ? '1 system' : `${d.count} systems`}`,
  'inventory.added': (d) => `Equipment recorded: ${d.name}`,
  'inventory.edited': (d) => `Equipment edited: ${d.name}`,
  'inventory.removed': (d) => `Equipment taken off the list: ${d.name}`,
  'report.requested': (d) => `${d.label} requested, revision ${d.revision}`,
  'report.issued': (d) => `${d.label} issued, revision ${d.revision}`,
  'report.failed': (d) => `${d.label} could not be made: ${d.problem}`,
  'report.shared': (d) =>
    `Link to the ${(d.document ?? 'report').toLowerCase()} made for ${d.label}, until ${longDay(d.until ?? '')}`,
  'report.share-ended': (d) => `Link for ${d.label} ended`,
  'report.opened-by-link': (d) => `Opened by the link for ${d.label}`,
  'review.asked': (d) => (d.reviewer ? `Review asked of ${d.reviewer}` : 'Review asked for'),
  'review.approved': () => 'Record approved by the reviewer',
  'review.sent-back': (d) => `Sent back by the reviewer: ${d.reason}`,
  'review.commented': (d) => (d.title ? `Reviewer’s thread on ${d.title}: ${d.text}` : `Review: ${d.text}`),
  'review.settled': (d) => (d.title ? `Thread on ${d.title} settled` : 'Thread of the review settled'),
  'review.reopened': (d) =>
    d.title ? `Thread on ${d.title} opened again` : 'Thread of the review opened again',
  'webhook.added': (d) => `Events are sent to another system: ${d.label}`,
  'webhook.removed': (d) => `Events are no longer sent to another system: ${d.label}`,
  'webhook.disabled': (d) => `Sending events to ${d.label} was given up: ${d.problem}`,
  'person.erased': (d) => `An account was erased at its holder’s wish (${d.roles})`,
  'evidence.sent': (d) => `Evidence sent: ${d.statement}`,
  'evidence.accepted': (d) => {
    if (d.reason) return `Evidence accepted: ${d.reason}`;
    return d.left ? 'Evidence accepted, other items are left' : 'Evidence accepted, finding cleared';
  },
  'evidence.returned': (d) => `Evidence returned: ${d.reason}`,
  'evidence.accepted-as-is': (d) =>
    [
      `Accepted as it is: ${d.limit || d.reason}`,
      d.limitUntil ? `, until ${longDay(d.limitUntil)}` : '',
    ].join(''),
  'evidence.part-accepted': (d) => `Evidence accepted in part: ${d.reason}`,
  'finding.extended': (d) => `More time given, until ${longDay(d.dueOn ?? '')}: ${d.reason}`,
  'finding.limit-ended': (d) =>
    `The limit ended within which it was accepted as it is, so it is open again: ${d.limit}`,
  'survey.re-inspected': (d) =>
    `Looked at again at ${d.place} on ${longDay(d.date ?? '')}: ${d.count === '1' ? '1 finding' : `${d.count} findings`}`,
  'finding.re-inspected': (d) => `Looked at again at ${d.place}: ${d.outcome}`,
  'finding.due-soon': (d) => `Reminded that it is due on ${longDay(d.dueOn ?? '')}`,
  'finding.overdue': (d) => `Yard reminded that it was due on ${longDay(d.dueOn ?? '')}`,
  'survey.overdue': (d) =>
    `Reminded of what is overdue: ${d.count === '1' ? '1 recommendation' : `${d.count} recommendations`}`,
  'comment.added': (d) => `Comment on ${d.title}`,
  'comment.removed': (d) => `Comment on ${d.title} taken back`,
  'firm.export-asked': () => 'An archive of everything the firm has was asked for',
  'firm.archive-fetched': () => 'The archive of everything the firm has was downloaded',
  'firm.rates-set': () => 'Rates and terms of payment set',
  'firm.terms-saved': (d) => `Terms of business saved, version ${d.version}`,
  'quotation.drafted': (d) => `Quotation drafted, revision ${d.revision}`,
  'quotation.sent': (d) => `Quotation revision ${d.revision} sent to ${d.to}: ${d.total}`,
  'quotation.accepted': (d) => `Quotation revision ${d.revision} accepted by ${d.typedName}`,
  'quotation.declined': (d) => `Quotation revision ${d.revision} declined: ${d.reason}`,
  'quotation.withdrawn': (d) => `Quotation revision ${d.revision} withdrawn: ${d.reason}`,
  'quotation.filed': (d) => `Accepted text of quotation revision ${d.revision} kept as PDF`,
  'visit.arranged': (d) => `Visit arranged for ${timeThere(d)}: ${d.place}`,
  'visit.moved': (d) => `Visit moved to ${timeThere(d)}: ${d.place}`,
  'visit.changed': (d) => `Visit of ${timeThere(d)} changed`,
  'visit.cancelled': (d) => `Visit of ${timeThere(d)} called off: ${d.reason}`,
  'visit.attended': (d) => `Visit of ${timeThere(d)} made: ${d.place}`,
  'visit.answered': (d) =>
    [`${d.name} ${d.answer} the visit of ${timeThere(d)}`, d.note ? `: ${d.note}` : ''].join(''),
  'invoice.drafted': () => 'Invoice drafted',
  'invoice.sent': (d) => `Invoice ${d.number} sent: ${d.total}`,
  'invoice.voided': (d) =>
    d.number ? `Invoice ${d.number} made void: ${d.reason}` : `Draft invoice discarded: ${d.reason}`,
  'payment.recorded': (d) => `Payment of ${d.amount} recorded for invoice ${d.number}`,
  'payment.taken-back': (d) => `Payment of ${d.amount} for invoice ${d.number} taken back`,
  'report.held': (d) =>
    d.rule === 'when-paid'
      ? 'Report withheld until it is paid for'
      : 'Report withheld until the principal’s word',
  'release.given': (d) => `The principal has the report handed over: ${d.reason}`,
  'report.handed-over': () => 'Report handed over to those it is released to',
} as const satisfies Record<string, (data: Record<string, string>) => string>;

export type EventKind = keyof typeof words;

/** The sentence for an event; a kind from a newer version is shown by its name. */
export function eventSummary(kind: string, data: Record<string, unknown>): string {
  const sentence = (words as Record<string, (data: Record<string, string>) => string>)[kind];
  const strings = Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, value == null ? '' : String(value)]),
  );
  return sentence ? sentence(strings) : kind;
}
