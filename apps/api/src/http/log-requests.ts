import type { FastifyInstance } from 'fastify';

/** Writes each request down as it ends, in one line: what was asked, what came of it, and how long it took. */
export function logRequests(app: FastifyInstance): void {
  // Nothing in these lines has to be blanked: of a request its serializer takes the route and the ids, of an answer
  // there is the status alone.
  const lines = app.log.child({}, { redact: [] });
  app.addHook('onResponse', (request, reply, done) => {
    // A route with a level of its own is too secret, or too often asked, to be written down.
    if (request.routeOptions.logLevel) return done();
    const { id: reqId } = request;
    const facts = { reqId, req: request, status: reply.statusCode, ms: Math.round(reply.elapsedTime) };
    lines.info(facts, reply.raw.writableFinished ? 'request' : 'request broken off');
    done();
  });
}
