import { type RouteName, routes } from '@garboard/contract/routes';
import fc from 'fast-check';
import { ask, faultOf, type Target } from './ask.ts';
import { type Asked, type Offer, requestsAt } from './request.ts';

/** Something found: the smallest request that shows it, and what is wrong with its answer. */
export interface Failure {
  request: Asked;
  fault: string;
}
export interface Fuzzed {
  requests: number;
  byStatus: Record<number, number>;
  slowestMs: number;
  failures: Failure[];
}
export interface FuzzOptions {
  requests: number;
  seed: number;
  /** Routes asked at the same time. */
  lanes: number;
  only?: readonly RouteName[];
  /** Requests change the world, so that one which failed isn't tried in smaller forms. */
  living?: boolean;
  /** Told now and then how far it has come. */
  onProgress?: (done: number) => void;
  /** Told of each failure once it is as small as it gets. */
  onFailure?: (failure: Failure) => void;
}

/** A request in one line, as it goes among the cases kept. */
export const printed = (request: Asked): string => {
  const line = JSON.stringify(request);
  return line.length > 3000 ? `${line.slice(0, 3000)}… (${line.length} characters)` : line;
};

/** How many different faults of one route are looked for. */
const mostOfRoute = 4;

/** What two faults have in common that are the same: numbers and quotations taken out. */
const kindOf = (fault: string): string =>
  fault.replace(/[0-9a-f]{8}-[0-9a-f-]{27}|\d+|“[^”]*”|"[^"]*"/g, '#').slice(0, 90);

/** Asks every route so many requests made up from its schemas, and makes what fails as small as it can. */
export async function runFuzz(target: Target, offer: Offer, options: FuzzOptions): Promise<Fuzzed> {
  const names = options.only ?? (Object.keys(routes) as RouteName[]);
  const result: Fuzzed = { requests: 0, byStatus: {}, slowestMs: 0, failures: [] };
  const each = Math.ceil(options.requests / names.length);
  const waiting = names.map((name, i) => ({ name, seed: options.seed + i * 7919 }));

  async function fuzzRoute({ name, seed }: { name: RouteName; seed: number }): Promise<void> {
    const known = new Set<string>();
    let left = each;
    for (let round = 0; left > 0 && known.size < mostOfRoute; round++) {
      let last = '';
      const property = fc.asyncProperty(requestsAt(name, offer), async (asked) => {
        const answer = await ask(target, asked);
        left--;
        result.requests++;
        if (result.requests % 1000 === 0) options.onProgress?.(result.requests);
        result.byStatus[answer.status] = (result.byStatus[answer.status] ?? 0) + 1;
        const fault = faultOf(asked, answer, target.slowMs);
        result.slowestMs = Math.max(result.slowestMs, answer.tookMs);
        if (!fault || known.has(kindOf(fault))) return;
        last = fault;
        throw new Error(fault);
      });
      const settings = {
        seed: seed + round,
        numRuns: left,
        interruptAfterTimeLimit: 240_000,
        endOnFailure: options.living === true,
      };
      const details = await fc.check(property, settings);
      if (!details.failed || !details.counterexample) return;
      const [request] = details.counterexample;
      const fault = details.errorInstance instanceof Error ? details.errorInstance.message : last;
      known.add(kindOf(fault));
      result.failures.push({ request, fault });
      options.onFailure?.({ request, fault });
    }
  }

  const lane = async () => {
    for (let next = waiting.pop(); next; next = waiting.pop()) await fuzzRoute(next);
  };
  await Promise.all(Array.from({ length: options.lanes }, lane));
  return result;
}
