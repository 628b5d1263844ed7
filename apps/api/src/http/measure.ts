import { durations, Histogram } from '@garboard/platform/metrics';
import type { FastifyInstance } from 'fastify';
import type { Deps } from './deps.ts';

/** Times every request by its route's pattern, method and status. Addresses that are no route are counted together. */
export function measureRequests(app: FastifyInstance, deps: Deps): void {
  if (!deps.metrics) return;
  const seconds = new Histogram({
    name: 'garboard_request_seconds',
    help: 'Time from the arrival of a request to the end of its answer',
    labelNames: ['method', 'route', 'status'],
    buckets: durations,
    registers: [deps.metrics],
  });
  app.addHook('onResponse', (request, reply, done) => {
    const route = request.routeOptions.url ?? 'none';
    seconds.observe({ method: request.method, route, status: reply.statusCode }, reply.elapsedTime / 1000);
    done();
  });
}
