import { once } from 'node:events';
import { type AddressInfo, connect } from 'node:net';
import { installClosing } from '@garboard/api/http/closing';
import Fastify from 'fastify';
import { expect, test } from 'vitest';

/** A server with one slow address, and clients that keep their connections for as long as they are let. */
async function serve() {
  const app = Fastify();
  installClosing(app);
  let answer = () => {};
  let asked = () => {};
  const begun = new Promise<void>((resolve) => {
    asked = resolve;
  });
  app.get('/slow', async () => {
    asked();
    await new Promise<void>((resolve) => {
      answer = resolve;
    });
    return 'answered';
  });
  await app.listen({ port: 0, host: '127.0.0.1' });
  const { port } = app.server.address() as AddressInfo;
  const client = async (words: string) => {
    const socket = connect(port, '127.0.0.1');
    await once(socket, 'connect');
    let heard = '';
    socket.on('data', (bytes) => {
      heard += bytes;
    });
    if (words) socket.write(words);
    return { heard: () => heard, gone: once(socket, 'close') };
  };
  return { app, client, begun, answer: () => answer() };
}

test('what was under way as closing began is answered, and its connection then isn’t kept', async () => {
  const { app, client, begun, answer } = await serve();
  const { heard, gone } = await client('GET /slow HTTP/1.1\r\nhost: here\r\nconnection: keep-alive\r\n\r\n');
  await begun;
  const closed = app.close();
  await new Promise((done) => setTimeout(done, 150));
  answer();
  await closed;
  await gone;
  expect(heard()).toContain('answered');
}, 10_000);

test('a connection that was opened and never asked anything holds nobody up', async () => {
  const { app, client } = await serve();
  const { gone } = await client('');
  await app.close();
  await gone;
}, 10_000);
