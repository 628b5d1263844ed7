import autocannon from 'autocannon';
import type { Round } from './harness.ts';

export interface Asked {
  url: string;
  headers?: Record<string, string>;
  method?: 'GET' | 'POST';
  body?: string;
  /** How many connections ask at once, each its next request when it has the answer to the last. */
  connections: number;
  seconds: number;
}

/**
 * Asks one thing again and again. The generator is this process alone, ours and the floor are others: on two cores it
 * takes the same share from both, and neither pays for making requests. autocannon, because it costs a tenth of what
 * `fetch` does and keeps latencies in a histogram.
 *
 * @throws Error when any answer is another than 2xx
 */
export async function ask({
  url,
  headers = {},
  method = 'GET',
  body,
  connections,
  seconds,
}: Asked): Promise<Round> {
  const result = await autocannon({ url, method, headers, body, connections, duration: seconds });
  if (result.non2xx > 0 || result.errors > 0) {
    throw new Error(`${url}: ${result.non2xx} answers were refusals, ${result.errors} requests failed.`);
  }
  return { value: result['2xx'] / result.duration, p50: result.latency.p50, p99: result.latency.p99 };
}

/** A request that can be made once, such as one that makes a record. */
export interface Once {
  path: string;
  headers: Record<string, string>;
  body: string;
}

/** Posts each of these once, so many at a time. `value` is posts a second. @throws Error when one is refused */
export async function askOnceEach(url: string, posts: readonly Once[], connections: number): Promise<Round> {
  const took: number[] = [];
  const left = posts.values();
  const begun = performance.now();
  const one = async () => {
    for (const { path, headers, body } of left) {
      const sent = performance.now();
      const answer = await fetch(url + path, { method: 'POST', headers, body });
      const said = await answer.text();
      if (!answer.ok) throw new Error(`${path}: ${answer.status} ${said}`);
      took.push(performance.now() - sent);
    }
  };
  await Promise.all(Array.from({ length: connections }, one));
  const seconds = (performance.now() - begun) / 1000;
  const sorted = took.sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor((sorted.length - 1) * share)] ?? 0;
  return { value: posts.length / seconds, p50: at(0.5), p99: at(0.99) };
}
