import { type AddressInfo, connect, createServer, type Server, type Socket } from 'node:net';

/** A cable to a server that can be cut and mended; its address stays the same. */
export interface Cable {
  /** The server’s address, with the cable’s end in place of its own. */
  url: string;
  /** Breaks every connection and refuses new ones. */
  cut(): Promise<void>;
  mend(): Promise<void>;
  /** Nothing passes any more and nobody is told: connections stay open, new ones are taken and lead nowhere. */
  block(): void;
  /** Where the server is now; connections under way stay with the old one. */
  leadTo(serverUrl: string): void;
}

/** Lays a cable to a server on loopback. */
export async function layCable(serverUrl: string): Promise<Cable> {
  let to = new URL(serverUrl).port;
  let blocked = false;
  const ends = new Set<Socket>();
  const pairs = new Set<[Socket, Socket]>();
  let port = 0;
  let exchange: Server | null = null;
  const cable: Cable = {
    url: '',
    async mend() {
      if (blocked) {
        // What was under way is lost, as it is when a network comes back after minutes.
        blocked = false;
        for (const end of ends) end.destroy();
      }
      if (exchange) return;
      const opened = createServer((near) => {
        if (blocked) {
          ends.add(near);
          near.on('error', () => near.destroy());
          near.on('close', () => ends.delete(near));
          return;
        }
        const far = connect(Number(to), '127.0.0.1');
        const pair: [Socket, Socket] = [near, far];
        pairs.add(pair);
        for (const end of [near, far]) {
          ends.add(end);
          end.on('error', () => end.destroy());
          end.on('close', () => {
            ends.delete(end);
            pairs.delete(pair);
            near.destroy();
            far.destroy();
          });
        }
        near.pipe(far);
        far.pipe(near);
      });
      await new Promise<void>((done) => opened.listen(port, '127.0.0.1', done));
      port = (opened.address() as AddressInfo).port;
      exchange = opened;
    },
    block() {
      blocked = true;
      for (const [near, far] of pairs) {
        near.unpipe(far).pause();
        far.unpipe(near).pause();
      }
    },
    leadTo(serverUrl) {
      to = new URL(serverUrl).port;
    },
    async cut() {
      const opened = exchange;
      exchange = null;
      for (const end of ends) end.destroy();
      if (opened) await new Promise((done) => opened.close(done));
    },
  };
  await cable.mend();
  const url = new URL(serverUrl);
  url.hostname = '127.0.0.1';
  url.port = String(port);
  cable.url = url.href.replace(/\/$/, '');
  return cable;
}
