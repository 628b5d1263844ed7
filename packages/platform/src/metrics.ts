import { createServer } from 'node:http';
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';

export { Counter, Gauge, Histogram };

/** Seconds; from a cached read to a report of hundreds of photos. */
export const durations = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 120];

/** What a process counts about itself, in the form Prometheus reads. Labels name routes and jobs, never people. */
export function openMetrics(program: string): Registry {
  const registry = new Registry();
  registry.setDefaultLabels({ program });
  collectDefaultMetrics({ register: registry });
  return registry;
}

export interface MetricsServer {
  port: number;
  close(): Promise<void>;
}

/**
 * Serves `GET /metrics` on a port of its own, which the world outside isn't meant to reach.
 * @throws Error when the port is taken
 */
export async function serveMetrics(
  registry: Registry,
  { port, host }: { port: number; host: string },
): Promise<MetricsServer> {
  const server = createServer(async (request, response) => {
    if (request.method !== 'GET' || request.url !== '/metrics') {
      response.writeHead(404).end();
      return;
    }
    try {
      const body = await registry.metrics();
      response.writeHead(200, { 'content-type': registry.contentType }).end(body);
    } catch {
      // What is gathered on asking, such as the queue's length, may be away; the next asking is in seconds.
      response.writeHead(503).end();
    }
  });
  await new Promise<void>((done, fail) => {
    server.once('error', fail);
    server.listen(port, host, done);
  });
  const address = server.address();
  return {
    port: typeof address === 'object' && address ? address.port : port,
    close: () => new Promise((done) => server.close(() => done())),
  };
}
