import { type AddressInfo, connect, createServer, type Server, type Socket } from 'node:net';

/** A cable between a browser and a server that can be cut and mended; its address stays the same. */
export interface Cable {
  url: string;
  /** Breaks every connection and refuses new ones. */
  cut(): Promise<void>;
  mend(): Promise<void>;
}

/** Lays a cable to a server on loopback. */
export async function layCable(serverUrl: string): Promise<Cable> {
  const { port: to } = new URL(serverUrl);
  const ends = new Set<Socket>();
  let port = 0;
  let exchange: Server | null = null;
  const cable: Cable = {
    url: '',
    async mend() {
      if (exchange) return;
      const opened = createServer((near) => {
        const far = connect(Number(to), '127.0.0.1');
        for (const end of [near, far]) {
          ends.add(end);
          end.on('error', () => end.destroy());
          end.on('close', () => {
            ends.delete(end);
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
    async cut() {
      const opened = exchange;
      exchange = null;
      for (const end of ends) end.destroy();
      if (opened) await new Promise((done) => opened.close(done));
    },
  };
  await cable.mend();
  cable.url = `http://127.0.0.1:${port}`;
  return cable;
}
