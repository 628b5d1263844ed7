import type { FastifyInstance } from 'fastify';

/** Writes each request down as it ends, in one line: what was asked, what came of it, and how long it took. */
export function logRequests(app: FastifyInstance): void {
  app.addHook('onResponse', (request, reply, done) => {
    const facts = { req: request, status: reply.statusCode, ms: Math.round(reply.elapsedTime) };
    request.log.info(facts, reply.raw.writableFinished ? 'request' : 'request broken off');
    done();
  });
}
