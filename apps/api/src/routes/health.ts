import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';

const probeTimeoutMs = 5_000;

async function outcome(probe: () => Promise<void>): Promise<'ok' | string> {
  let timer: NodeJS.Timeout | undefined;
  try {
    const late = new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new Error('no answer in time')), probeTimeoutMs);
    });
    await Promise.race([probe(), late]);
    return 'ok';
  } catch (error) {
    return error instanceof Error ? error.message : 'failed';
  } finally {
    clearTimeout(timer);
  }
}

/** `live` says that the process answers; `ready` that everything it needs does too. */
export function healthRoutes(app: FastifyInstance, deps: Deps): void {
  app.get('/health/live', async () => ({ status: 'ok' }));
  app.get('/health/ready', async (request, reply) => {
    if (deps.draining?.()) {
      return reply.code(503).header('cache-control', 'no-store').send({ status: 'ending', parts: {} });
    }
    const entries = await Promise.all(
      Object.entries(deps.probes).map(async ([name, probe]) => [name, await outcome(probe)] as const),
    );
    const failed = entries.filter(([, result]) => result !== 'ok');
    if (failed.length > 0) request.log.warn({ failed }, 'not ready');
    // What exactly failed is for the log; strangers learn only which part.
    const parts = Object.fromEntries(
      entries.map(([name, result]) => [name, result === 'ok' ? 'ok' : 'failed']),
    );
    return reply
      .code(failed.length > 0 ? 503 : 200)
      .header('cache-control', 'no-store')
      .send({ status: failed.length > 0 ? 'not ready' : 'ok', parts });
  });
}
