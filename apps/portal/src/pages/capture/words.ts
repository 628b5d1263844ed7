import { type Reached, reachLabels } from '@garboard/trade/coverage';
import { systemLabels, verdictLabels } from '@garboard/trade/vocabulary';
import type { Kept } from '../../capture/kept.ts';
import { titleOf } from '../../capture/kept.ts';
import { count } from '../../ui/format.ts';

/** What a kept thing is, in a few words. */
export function whatIs(kept: Kept): string {
  switch (kept.kind) {
    case 'photo':
      return 'Photo';
    case 'note':
      return `Note: ${titleOf(kept.text)}`;
    case 'coverage':
      return `Coverage: ${reachWords(kept.answer.reached)}`;
    case 'worksheet':
      return `Worksheet: ${kept.title || kept.kindTitle}`;
  }
}

export const reachWords = (reached: Reached | null): string =>
  reached ? reachLabels[reached] : 'Not answered yet';

export const whereIs = (kept: Kept): string => `${systemLabels[kept.system]}, ${kept.surveyName}`;

/** What has become of it. */
export function stateOf(kept: Kept): string {
  switch (kept.state) {
    case 'waiting':
      return kept.sentBytes > 0 ? `Waiting, ${share(kept)} sent` : 'Waiting';
    case 'sending':
      return kept.bytes > 0 ? `Sending, ${share(kept)}` : 'Sending';
    case 'sent':
      return kept.kind === 'worksheet' && kept.verdict
        ? `Sent. Result: ${verdictLabels[kept.verdict as keyof typeof verdictLabels].toLowerCase()}`
        : 'Sent';
    case 'refused':
      return 'Refused';
  }
}

const share = (kept: Kept) => `${Math.floor((100 * kept.sentBytes) / kept.bytes)} %`;

/** One line on all that is kept. */
export function summaryOf(items: readonly Kept[], signal: boolean, ended: boolean): string {
  const refused = items.filter(({ state }) => state === 'refused').length;
  const toSend = items.filter(({ state }) => state === 'waiting' || state === 'sending');
  const parts: string[] = [];
  if (refused) parts.push(`${refused} refused`);
  if (toSend.length) {
    const now = toSend.find(({ state }) => state === 'sending');
    const how = ended
      ? 'sign in to send'
      : now
        ? `sending${now.bytes > 0 ? `, ${share(now)}` : ''}`
        : signal
          ? 'waiting'
          : 'waiting for signal';
    parts.push(`${count(toSend.length, 'thing')} to send, ${how}`);
  }
  if (parts.length) return parts.join('. ');
  return items.length ? 'Everything is sent' : 'Nothing kept yet';
}

const timeFormat = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
const dateFormat = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });

/** A time of today as `14:05`, of another day with its date. */
export function clockWords(at: number): string {
  const then = new Date(at);
  const time = timeFormat.format(then);
  return then.toDateString() === new Date().toDateString() ? time : `${dateFormat.format(then)}, ${time}`;
}
