import type { IncomingMessage } from 'node:http';
import type { FastifyInstance, FastifyReply } from 'fastify';

/** How much must pass between a client and us while one of us waits for the other’s bytes. */
export interface Pace {
  /** Bytes that must pass in that time. */
  leastBytes: number;
  withinMs: number;
}

/** A hundred bytes a second: far below what a photo needs to be sent at all, far above what a hostile client sends. */
export const slowestPace: Pace = { leastBytes: 6_000, withinMs: 60_000 };

interface Watched {
  reply: FastifyReply;
  /** What had passed on the connection when the client was last seen to get on. */
  passed: number;
  since: number;
}

/** Whether it is the client’s turn: to send the rest of its request, or to read what lies ready for it. */
function isClientsTurn(request: IncomingMessage, reply: FastifyReply): boolean {
  if (!request.complete) return true;
  return reply.raw.headersSent && !reply.raw.writableFinished && request.socket.writableLength > 0;
}

/** Hangs up on clients that send or read so slowly that they only hold a connection. */
export function installPace(app: FastifyInstance, { leastBytes, withinMs }: Pace = slowestPace): void {
  const open = new Map<IncomingMessage, Watched>();
  const passedOn = ({ socket }: IncomingMessage) => socket.bytesRead + socket.bytesWritten;
  app.addHook('onRequest', ({ raw }, reply, done) => {
    // An address that is no route comes by here twice: once more for the page that answers it.
    if (!open.has(raw)) {
      open.set(raw, { reply, passed: passedOn(raw), since: performance.now() });
      reply.raw.once('close', () => open.delete(raw));
    }
    done();
  });
  const look = () => {
    const now = performance.now();
    for (const [request, watched] of open) {
      const passed = passedOn(request);
      if (!isClientsTurn(request, watched.reply)) Object.assign(watched, { passed, since: now });
      else if (now - watched.since >= withinMs) {
        if (passed - watched.passed < leastBytes) {
          watched.reply.log.warn({ bytes: passed - watched.passed }, 'hung up on a client that crawls');
          request.socket.destroy();
        } else Object.assign(watched, { passed, since: now });
      }
    }
  };
  const timer = setInterval(look, withinMs / 6);
  timer.unref();
  app.addHook('onClose', async () => clearInterval(timer));
}
