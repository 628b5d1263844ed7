import type { ReviewStanding } from '@garboard/contract/reviews';

/** How the review stands, in a sentence; whether it keeps the report from being issued is for the caller to say. */
export function reviewSentence({ latest, stands, required }: ReviewStanding): string {
  if (stands) return `The record as it stands is approved by ${latest?.decidedBy ?? 'the reviewer'}`;
  if (latest?.state === 'asked') return 'A review is asked for and not decided yet.';
  if (latest?.state === 'sent-back') {
    return `${latest.decidedBy ?? 'The reviewer'} sent it back: ${latest.reason}`;
  }
  if (latest?.state === 'approved') {
    return `It was changed after ${latest.decidedBy ?? 'the reviewer'} approved it. Ask for a review again.`;
  }
  return required
    ? 'Your firm issues a report only when a second surveyor has approved it. Ask for a review.'
    : 'No review was asked for.';
}
