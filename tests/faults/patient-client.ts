import { setTimeout as sleep } from 'node:timers/promises';
import {
  type Answer,
  type CallArgs,
  createClient,
  ProblemError,
  problemFrom,
} from '@garboard/contract/client';
import type { RouteName } from '@garboard/contract/routes';
import type { Ledger } from './ledger.ts';

/** Longer than any answer may take, in milliseconds; then the request is sent again. */
const answerMs = 45_000;
const longestWaitMs = 2_000;

/** The run is over: what was being tried isn't tried again. */
export class RunOver extends Error {
  override name = 'RunOver';
}

/** The service refused, and no fault excuses it. */
export class Refused extends Error {
  override name = 'Refused';
  constructor(
    readonly route: string,
    readonly error: ProblemError,
  ) {
    super(`${route} was refused with ${error.problem.status}: ${error.problem.detail}`);
  }
}

/**
 * Somebody who sends again, with the same key, what got no answer: as the portal’s users and its telephone do.
 * @throws Refused for a refusal that waiting doesn’t change; RunOver when the run ends first
 */
export type PatientClient = <N extends RouteName>(name: N, args: CallArgs<N>) => Promise<Answer<N>>;

/** What a request that went wrong means for whoever sent it: to wait so long and send it again, or nothing more. */
function waitAfter(error: unknown, route: string, ledger: Ledger): number | null {
  if (error instanceof ProblemError) {
    const { status, detail } = error.problem;
    if (status === 503) {
      ledger.behaviour.askedToWait += 1;
      if (error.retryAfter === null)
        ledger.violation(`${route} answers 503 and doesn’t say when to come again.`);
      return Math.min((error.retryAfter ?? 1) * 1000, longestWaitMs);
    }
    if (status === 429) return longestWaitMs;
    if (status >= 500) {
      ledger.violation(`${route} answers ${status}: ${detail}`);
      return 500;
    }
    return null;
  }
  ledger.behaviour.unreachable += 1;
  return 250;
}

/** @param token of who asks; none for a stranger */
export function patientClient(
  baseUrl: string,
  { ledger, over, token }: { ledger: Ledger; over: AbortSignal; token?: string },
): PatientClient {
  const call = createClient({ baseUrl, ...(token ? { token } : {}) });
  return async (name, args) => {
    for (let tries = 1; ; tries += 1) {
      if (over.aborted) throw new RunOver();
      try {
        const answer = await call(name, { ...args, signal: AbortSignal.timeout(answerMs) });
        ledger.behaviour[tries === 1 ? 'atOnce' : 'repeated'] += 1;
        return answer;
      } catch (error) {
        const wait = waitAfter(error, name, ledger);
        if (wait === null) throw new Refused(name, error as ProblemError);
        await sleep(wait * (0.75 + Math.random() / 2), undefined, { signal: over }).catch(() => undefined);
      }
    }
  };
}

/** A file behind an address, whole; null when it couldn’t be had. */
export async function fetchFile(url: string, token: string): Promise<Buffer | ProblemError | null> {
  try {
    const answer = await fetch(url, {
      headers: { authorization: `Bearer ${token}` },
      signal: AbortSignal.timeout(answerMs),
    });
    return answer.ok ? Buffer.from(await answer.arrayBuffer()) : await problemFrom(answer);
  } catch {
    return null;
  }
}
