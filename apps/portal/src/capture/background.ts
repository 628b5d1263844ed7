import { isStatus } from '../api/problems.ts';
import type { Me } from '../app/session.tsx';
import { announce, onChange } from './changes.ts';
import { rememberPerson } from './identity.ts';
import { listKept, pruneSent } from './keep.ts';
import { hearAll } from './reads.ts';
import type { Round } from './send-round.ts';
import { sendKept } from './send-round.ts';

/**
 * What goes on for a surveyor while any window of the portal is open: sending what is kept on this telephone, and
 * hearing what will be needed without signal. Returns how to stop.
 */
export function workFor(me: Me, onSignedOut: () => void): () => void {
  rememberPerson(me);
  const quiet = onChange((change) => {
    if (change === 'signed-out') onSignedOut();
  });
  const ends = [keepSending(me.person.id), keepListening(me.person.id), quiet];
  return () => {
    for (const end of ends) end();
  };
}

/** Seconds to the next try, growing; a sign of life from network or person comes first. */
const waits = [5, 15, 60, 300];

/** Sends what a person keeps for as long as a window of the portal is open. Returns how to stop. */
function keepSending(personId: string): () => void {
  const over = new AbortController();
  let failures = 0;
  let timer = 0;
  let running = false;
  let again = false;

  async function run(): Promise<void> {
    if (over.signal.aborted) return;
    again = running;
    if (running) return;
    running = true;
    window.clearTimeout(timer);
    const round = await sendKept(personId, { signal: over.signal }).catch((error: unknown): Round => {
      console.error(error);
      return { end: 'busy', seconds: 60 };
    });
    running = false;
    failures = round.end === 'no-signal' || round.end === 'busy' ? failures + 1 : 0;
    if (again && (round.end === 'done' || round.end === 'stopped')) void run();
    else if (failures > 0) {
      const seconds = Math.max(waits[Math.min(failures, waits.length) - 1] ?? 300, secondsOf(round));
      timer = window.setTimeout(() => void run(), seconds * 1000);
    }
  }

  const wake = () => {
    failures = 0;
    void run();
  };
  const seen = () => {
    if (document.visibilityState === 'visible') wake();
  };
  const quiet = onChange((change) => {
    if (change === 'kept' && !running) void whenWaiting(personId, wake);
    else if (change === 'kept') again = true;
  });
  window.addEventListener('online', wake);
  document.addEventListener('visibilitychange', seen);
  void pruneSent(personId).finally(() => void run());
  return () => {
    over.abort();
    window.clearTimeout(timer);
    quiet();
    window.removeEventListener('online', wake);
    document.removeEventListener('visibilitychange', seen);
  };
}

const secondsOf = (round: Round): number => (round.end === 'busy' ? round.seconds : 0);

async function whenWaiting(personId: string, wake: () => void): Promise<void> {
  if ((await listKept(personId)).some((kept) => kept.state === 'waiting')) wake();
}

const anewAfter = 10 * 60_000;

/** Keeps the telephone's copy of surveys and worksheets up to date. Returns how to stop. */
function keepListening(personId: string): () => void {
  let last = 0;
  const hear = async () => {
    if (!navigator.onLine || Date.now() - last < anewAfter) return;
    last = Date.now();
    try {
      await hearAll(personId);
    } catch (error) {
      last = 0;
      if (isStatus(error, 401)) announce('signed-out');
    }
  };
  const listener = () => void hear();
  listener();
  window.addEventListener('online', listener);
  document.addEventListener('visibilitychange', listener);
  return () => {
    window.removeEventListener('online', listener);
    document.removeEventListener('visibilitychange', listener);
  };
}
