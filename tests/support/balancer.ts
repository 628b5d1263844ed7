import { once } from 'node:events';
import { Agent, request as ask, createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** One address before several api processes. */
export interface Balancer {
  url: string;
  /** Replaces the processes it knows. */
  serve(urls: readonly string[]): void;
  close(): Promise<void>;
}

const checkMs = 250;

/**
 * A small round-robin proxy as stands before a fleet: asks each process four times a second whether it is ready, gives
 * requests to those that are, keeps connections open, and tries nothing twice.
 */
export async function startBalancer(): Promise<Balancer> {
  let processes: { url: string; ready: boolean }[] = [];
  let turn = 0;
  const agent = new Agent({ keepAlive: true });
  const check = async () => {
    await Promise.all(
      processes.map(async (one) => {
        one.ready = await fetch(`${one.url}/health/ready`).then(
          ({ ok }) => ok,
          () => false,
        );
      }),
    );
  };
  const server = createServer((incoming, outgoing) => {
    const ready = processes.filter((one) => one.ready);
    turn += 1;
    const target = ready[turn % ready.length];
    if (!target) return void outgoing.writeHead(502).end('No process is ready.');
    const { method, url, headers } = incoming;
    const passed = ask(`${target.url}${url}`, { method, headers, agent }, (answer) => {
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(outgoing);
    });
    passed.on('error', (error) => {
      if (outgoing.headersSent) outgoing.destroy();
      else outgoing.writeHead(502).end(`${error}`);
    });
    incoming.pipe(passed);
    incoming.once('error', () => passed.destroy());
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const timer = setInterval(() => void check(), checkMs);
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    serve(urls) {
      processes = urls.map((url) => processes.find((one) => one.url === url) ?? { url, ready: false });
      void check();
    },
    async close() {
      clearInterval(timer);
      agent.destroy();
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
}
