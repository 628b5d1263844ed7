import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A receiver of webhooks that says yes to everything. */
export interface Receiver {
  url: string;
  /** For each report that was told of as issued, the ids of the messages, and how often each came. */
  told: Map<string, Map<string, number>>;
  close(): Promise<void>;
}

export async function startReceiver(): Promise<Receiver> {
  const told: Receiver['told'] = new Map();
  const server = createServer(async (asked, answer) => {
    let body = '';
    for await (const chunk of asked) body += chunk;
    const { data } = JSON.parse(body) as { data: { reportId: string | null } };
    const id = String(asked.headers['webhook-id']);
    if (data.reportId) {
      const ids = told.get(data.reportId) ?? new Map<string, number>();
      ids.set(id, (ids.get(id) ?? 0) + 1);
      told.set(data.reportId, ids);
    }
    answer.writeHead(204).end();
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/told`,
    told,
    async close() {
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    },
  };
}
