import type { WebhookKind } from '@garboard/trade/webhook-kinds';

/** What a system can be told of, as people say it. */
export const kindWords: Record<WebhookKind, string> = {
  'survey.created': 'A survey was opened',
  'survey.moved': 'A survey moved on',
  'party.released': 'Contents were released to a party',
  'party.release-withdrawn': 'A release was withdrawn',
  'report.issued': 'A document was issued',
  'finding.issued': 'A finding was issued',
  'finding.withdrawn': 'A finding was withdrawn',
  'finding.extended': 'More time was given',
  'evidence.sent': 'Evidence was sent',
  'evidence.accepted': 'Evidence was accepted',
  'evidence.part-accepted': 'Evidence was accepted in part',
  'evidence.returned': 'Evidence was returned',
  'evidence.accepted-as-is': 'A finding was accepted as it is',
  'survey.re-inspected': 'A boat was looked at again',
};

export const wordsOf = (kind: string): string =>
  (kindWords as Record<string, string>)[kind] ?? (kind === 'trial' ? 'Trial message' : kind);
