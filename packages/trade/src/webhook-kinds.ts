import type { EventKind } from './event-words.ts';

/**
 * Events of which other systems can be told, and what the receiver must be able to see to be: the survey, or what was
 * issued of it. Firms are told of all of them, parties of those they may see when the message leaves.
 */
export const webhookKinds = {
  'survey.created': 'survey',
  'survey.moved': 'survey',
  'party.released': 'survey',
  'party.release-withdrawn': 'survey',
  'report.issued': 'issued',
  'finding.issued': 'issued',
  'finding.withdrawn': 'issued',
  'finding.extended': 'issued',
  'evidence.sent': 'issued',
  'evidence.accepted': 'issued',
  'evidence.part-accepted': 'issued',
  'evidence.returned': 'issued',
  'evidence.accepted-as-is': 'issued',
  'survey.re-inspected': 'issued',
} as const satisfies Partial<Record<EventKind, 'survey' | 'issued'>>;

export type WebhookKind = keyof typeof webhookKinds;
export const webhookKindList = Object.keys(webhookKinds) as [WebhookKind, ...WebhookKind[]];

/** Whether other systems can be told of a kind of event. */
export const isWebhookKind = (kind: string): kind is WebhookKind => Object.hasOwn(webhookKinds, kind);
