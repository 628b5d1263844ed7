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
