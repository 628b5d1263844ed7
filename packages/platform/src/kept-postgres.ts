import { setTimeout as sleep } from 'node:timers/promises';
import {
  type EmbeddedPostgres,
  type EmbeddedPostgresOptions,
  startEmbeddedPostgres,
} from './embedded-postgres.ts';
import { isAlive } from './postgres-running.ts';

const lookEveryMs = 250;
const firstDelayMs = 200;
const longestDelayMs = 5_000;

/**
 * Starts PostgreSQL as `startEmbeddedPostgres` does, and again at the same address whenever it has ended unasked: killed
 * by a machine short of memory, say. What was committed is there again then.
 * @param onEnd told each time it has ended, before it is started again
 */
export async function keepPostgres(
  options: EmbeddedPostgresOptions,
  onEnd: () => void,
): Promise<Pick<EmbeddedPostgres, 'url' | 'stop'>> {
  let server = await startEmbeddedPostgres(options);
  const { url, port } = server;
  const stopping = new AbortController();
  const pause = (ms: number) => sleep(ms, undefined, { signal: stopping.signal }).catch(() => undefined);

  // The rest of a server whose first process was killed holds its memory for a moment: it is tried until it works.
  const startAgain = async () => {
    for (let delay = firstDelayMs; !stopping.signal.aborted; delay = Math.min(delay * 2, longestDelayMs)) {
      try {
        server = await startEmbeddedPostgres({ ...options, port });
        return;
      } catch (error) {
        options.log.warn({ err: error }, 'PostgreSQL did not start again, tried soon');
        await pause(delay);
      }
    }
  };
  const watch = async () => {
    while (!stopping.signal.aborted) {
      if (!isAlive(server.pid)) {
        onEnd();
        await server.stop();
        await startAgain();
      }
      await pause(lookEveryMs);
    }
  };
  const watching = watch();
  return {
    url,
    async stop() {
      stopping.abort();
      await watching;
      await server.stop();
    },
  };
}
