import type { Socket } from 'node:net';
import type { FastifyInstance } from 'fastify';

const lookMs = 50;

/**
 * While the server closes, hangs up on each connection as soon as nothing is under way on it. Node does that once, as
 * closing begins: what was busy then, and what was opened but never asked anything, would keep the process alive for as
 * long as the client likes.
 */
export function installClosing(app: FastifyInstance): void {
  const { server } = app;
  const open = new Set<Socket>();
  server.on('connection', (socket: Socket) => {
    open.add(socket);
    socket.once('close', () => open.delete(socket));
  });
  const look = () => {
    server.closeIdleConnections();
    for (const socket of open) if (socket.bytesRead === 0) socket.destroy();
  };
  let timer: NodeJS.Timeout | undefined;
  app.addHook('preClose', async () => {
    timer = setInterval(look, lookMs);
  });
  app.addHook('onClose', async () => clearInterval(timer));
}
