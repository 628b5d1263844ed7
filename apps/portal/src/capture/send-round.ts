import { call as callApi, ProblemError } from '../api/client.ts';
import { announce, onChange } from './changes.ts';
import { listKept } from './keep.ts';
import type { Kept } from './kept.ts';
import { Refused, type Send, sendItem } from './send-item.ts';
import { settle } from './settle.ts';

/**
 * How a round of sending ended. `done`: nothing is waiting. `no-signal` and `busy`: try again later. `signed-out`:
 * the session has ended. `another`: somebody else is signed in on this telephone. `stopped`: was told to stop.
 */
export type Round =
  | { end: 'done' | 'no-signal' | 'signed-out' | 'another' | 'stopped' }
  | { end: 'busy'; seconds: number };

const oneRequest = 60_000;

/**
 * Sends what waits, oldest first, until nothing does. One sender at a time over all windows and the service worker;
 * others wait for their turn, or leave at once with `ifFree`.
 */
export async function sendKept(
  personId: string,
  options: { signal?: AbortSignal; ifFree?: boolean } = {},
): Promise<Round> {
  const stop = new AbortController();
  const signal = options.signal ? AbortSignal.any([options.signal, stop.signal]) : stop.signal;
  const quiet = onChange((change) => {
    if (change === 'stop') stop.abort();
  });
  try {
    return await navigator.locks.request(
      'garboard-sending',
      options.ifFree ? { ifAvailable: true } : { signal },
      (lock) => (lock ? sendAll(personId, signal) : { end: 'done' as const }),
    );
  } catch (error) {
    if (signal.aborted) return { end: 'stopped' };
    throw error;
  } finally {
    quiet();
  }
}

async function sendAll(personId: string, signal: AbortSignal): Promise<Round> {
  await resume(personId);
  const call: Send['call'] = (name, args) =>
    callApi(name, { ...args, signal: AbortSignal.any([signal, AbortSignal.timeout(oneRequest)]) });
  for (;;) {
    const items = await listKept(personId);
    const item = items.find((kept) => kept.state === 'waiting');
    if (!item) return { end: 'done' };
    if (signal.aborted) return { end: 'stopped' };
    if (!navigator.onLine) return { end: 'no-signal' };
    const end = await sendOne({ personId, call, items }, item, signal);
    if (end) return end;
  }
}

/** What was being sent when a window was closed waits again; the server knows how far it came. */
async function resume(personId: string): Promise<void> {
  const cutOff = (await listKept(personId)).filter((kept) => kept.state === 'sending');
  for (const item of cutOff) await settle(personId, item, { state: 'waiting' });
}

async function sendOne(send: Send, item: Kept, signal: AbortSignal): Promise<Round | null> {
  const { personId } = send;
  try {
    // Asked each time: on a shared telephone somebody else may have signed in since.
    const { person } = await send.call('getMe', {});
    if (person.id !== personId) return { end: 'another' };
    if (!(await settle(personId, item, { state: 'sending', attempts: item.attempts + 1 }))) return null;
    await sendItem(send, item);
    return null;
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal !== null) {
      await settle(personId, item, { state: 'refused', refusal });
      return null;
    }
    await settle(personId, item, { state: 'waiting' });
    if (signal.aborted) return { end: 'stopped' };
    if (!(error instanceof ProblemError)) {
      // A lost connection or a request that took too long; anything else is a fault of ours and is told.
      if (error instanceof TypeError || error instanceof DOMException) return { end: 'no-signal' };
      throw error;
    }
    if (error.problem.status !== 401) return { end: 'busy', seconds: error.retryAfter ?? 0 };
    announce('signed-out');
    return { end: 'signed-out' };
  }
}

/** The sentence of a refusal that trying again won't change, else null. */
function refusalOf(error: unknown): string | null {
  if (error instanceof Refused) return error.message;
  if (!(error instanceof ProblemError)) return null;
  const { status, detail, title } = error.problem;
  if (status >= 500 || status === 401 || status === 408 || status === 429) return null;
  if (status === 404) return 'This survey is no longer there for you. Ask your firm, then send again.';
  return detail || title;
}
