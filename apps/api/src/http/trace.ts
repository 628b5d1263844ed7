import { beginRequestSpan, type RequestSpan, tracingOn } from '@garboard/platform/tracing';
import type { FastifyInstance } from 'fastify';

/** Makes each request of a route of the contract a span, in the trace its `traceparent` names, for what it causes. */
export function traceRequests(app: FastifyInstance): void {
  if (!tracingOn()) return;
  app.decorateRequest('span', null);
  app.addHook('onRequest', (request, _reply, done) => {
    const { config, url } = request.routeOptions;
    if (!config.route || !url) return done();
    request.span = beginRequestSpan(request.headers, {
      name: `${request.method} ${url}`,
      facts: {
        'http.request.method': request.method,
        'http.route': url,
        'garboard.request_id': request.id,
      },
    });
    return request.span.within(done);
  });
  // Reading the body leaves the span's surroundings, since it is the connection that goes on.
  app.addHook('preValidation', (request, _reply, done) =>
    request.span ? request.span.within(done) : done(),
  );
  app.addHook('onResponse', async (request, reply) => request.span?.end(reply.statusCode));
}

declare module 'fastify' {
  interface FastifyRequest {
    span: RequestSpan | null;
  }
}
