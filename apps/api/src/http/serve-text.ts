import { type Route, type RouteName, type Routes, routes } from '@garboard/contract/routes';
import { sightOf } from '@garboard/core/access/actor';
import type { Ctx } from '@garboard/core/context';
import { inTransaction } from '@garboard/db/database';
import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';
import type { Deps } from './deps.ts';
import { actorOf, contextOf, fastifyPath } from './serve.ts';
import { disposition } from './serve-bytes.ts';

type TextRoute = {
  [N in RouteName]: Routes[N] extends { response: 'bytes' } ? N : never;
}[RouteName];
type Params<R> = R extends { params: infer P extends z.ZodType } ? z.output<P> : undefined;

/** A file made on the spot, small enough to be a string. */
export interface MadeText {
  text: string;
  mediaType: string;
  fileName: string;
}

/** Registers a route that answers with a text made for it, to be kept as a file. */
export function serveText<N extends TextRoute>(
  app: FastifyInstance,
  deps: Deps,
  name: N,
  handler: (ctx: Ctx, params: Params<Routes[N]>) => Promise<MadeText>,
): void {
  const route: Route = routes[name];
  app.served.names.add(name);
  app.route({
    method: route.method,
    url: fastifyPath(route),
    schema: route.params ? { params: route.params } : {},
    config: { route },
    handler: async (request, reply) => {
      const params = request.params as Params<Routes[N]>;
      const made = await inTransaction(deps.db, sightOf(actorOf(request)), (tx) =>
        handler(contextOf(deps, request, tx), params),
      );
      reply.header('content-type', made.mediaType);
      reply.header('x-content-type-options', 'nosniff');
      reply.header('content-disposition', disposition('attachment', made.fileName));
      return reply.code(route.status).send(made.text);
    },
  });
}
