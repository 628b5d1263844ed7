import { once } from 'node:events';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What a store does with each request. */
export type StoreFault = { status: number; code: string } | { delayMs: number } | 'refuses' | null;

/** Something that stands before an S3-compatible server and fails as servers do. */
export interface FaultyStore {
  port: number;
  /** How it behaves from now on; null: as it should. */
  behave(fault: StoreFault): Promise<void>;
  close(): Promise<void>;
}

/** Stands before the server on this port of loopback. Signatures hold, as requests are passed on word for word. */
export async function standBefore(to: number): Promise<FaultyStore> {
  let fault: StoreFault = null;
  let open = true;
  const server = createServer(async (asked, answer) => {
    const now = fault;
    if (now && typeof now === 'object' && 'status' in now) {
      asked.resume();
      await once(asked, 'end').catch(() => undefined);
      const body = `<?xml version="1.0"?><Error><Code>${now.code}</Code><Message>Not now.</Message></Error>`;
      answer.writeHead(now.status, { 'content-type': 'application/xml' }).end(body);
      return;
    }
    if (now && typeof now === 'object') await new Promise((done) => setTimeout(done, now.delayMs));
    const { method, url, headers } = asked;
    const passed = request({ host: '127.0.0.1', port: to, method, path: url, headers }, (got) => {
      answer.writeHead(got.statusCode ?? 502, got.headers);
      got.pipe(answer);
    });
    passed.on('error', () => answer.destroy());
    answer.on('close', () => passed.destroy());
    asked.pipe(passed);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  const shut = async () => {
    if (!open) return;
    open = false;
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
  };
  return {
    port,
    async behave(next) {
      fault = next;
      if (next === 'refuses') return shut();
      if (open) return;
      server.listen(port, '127.0.0.1');
      await once(server, 'listening');
      open = true;
    },
    close: shut,
  };
}
