import { once } from 'node:events';
import { type AddressInfo, connect } from 'node:net';
import { Readable } from 'node:stream';
import { installPace } from '@garboard/api/http/pace';
import Fastify, { type FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, test } from 'vitest';

let app: FastifyInstance;
let port: number;
const large = Buffer.alloc(64 * 1024 * 1024, 'a');

beforeAll(async () => {
  app = Fastify({ bodyLimit: 1_000_000 });
  installPace(app, { leastBytes: 1_000, withinMs: 1_200 });
  app.post('/taken', async () => 'taken');
  app.get('/large', async (_, reply) => reply.send(Readable.from([large])));
  app.get('/late', async () => {
    await new Promise((done) => setTimeout(done, 3_000));
    return 'late';
  });
  await app.listen({ port: 0, host: '127.0.0.1' });
  port = (app.server.address() as AddressInfo).port;
});
afterAll(() => app.close());

/** A connection on which this was sent. */
function client(words: string) {
  const socket = connect(port, '127.0.0.1');
  socket.on('error', () => undefined);
  socket.write(words);
  return socket;
}
const post = (bytes: number) =>
  `POST /taken HTTP/1.1\r\nhost: here\r\ncontent-type: application/json\r\ncontent-length: ${bytes}\r\n\r\n`;

test('a client that crawls while it sends is hung up on', async () => {
  const socket = client(post(100_000));
  const timer = setInterval(() => socket.write(' '), 50);
  await once(socket, 'close');
  clearInterval(timer);
});

test('a client that hardly reads is hung up on', async () => {
  const socket = client('GET /large HTTP/1.1\r\nhost: here\r\n\r\n');
  socket.pause();
  // Only reading shows that the other end has gone.
  await once(app.server, 'request');
  const [connection] = await once(socket, 'readable');
  expect(connection).toBeUndefined();
  const open = () => new Promise<number>((done) => app.server.getConnections((_, count) => done(count)));
  await expect.poll(open, { timeout: 20_000 }).toBe(0);
  socket.destroy();
});

test('a client that is slow but gets on, and one that waits for us, are served', async () => {
  const waiting = fetch(`http://127.0.0.1:${port}/late`).then((answer) => answer.text());
  const body = `"${'x'.repeat(30_000)}"`;
  const socket = client(post(body.length));
  let answer = '';
  socket.on('data', (bytes) => {
    answer += bytes;
  });
  for (let at = 0; at < body.length; at += 2_000) {
    socket.write(body.slice(at, at + 2_000));
    await new Promise((done) => setTimeout(done, 200));
  }
  await expect.poll(() => answer, { timeout: 10_000 }).toContain('taken');
  socket.destroy();
  expect(await waiting).toBe('late');
});
