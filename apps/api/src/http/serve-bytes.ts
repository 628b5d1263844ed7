import { type Route, type RouteName, type Routes, routes } from '@garboard/contract/routes';
import { sightOf } from '@garboard/core/access/actor';
import type { Ctx } from '@garboard/core/context';
import type { ServedFile } from '@garboard/core/files/served-file';
import { inTransaction } from '@garboard/db/database';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { Deps } from './deps.ts';
import { inertPolicy } from './protect.ts';
import { actorOf, contextOf, fastifyPath } from './serve.ts';

type BytesRoute = { [N in RouteName]: Routes[N] extends { response: 'bytes' } ? N : never }[RouteName];
type Part<R, K extends string> = R extends { [P in K]: infer V extends z.ZodType } ? z.output<V> : undefined;

interface Asked<N extends BytesRoute> {
  params: Part<Routes[N], 'params'>;
  query: Part<Routes[N], 'query'>;
  request: FastifyRequest;
}

/**
 * Registers a route that answers with a stored file: the handler says which in a transaction, and the bytes are
 * streamed after it has ended, so that a slow reader holds no connection to the database.
 */
export function serveBytes<N extends BytesRoute>(
  app: FastifyInstance,
  deps: Deps,
  name: N,
  handler: (ctx: Ctx, input: Asked<N>) => Promise<ServedFile>,
): void {
  serveFile(app, deps, name, (within, input) => within((ctx) => handler(ctx, input)));
}

/** Runs work in a transaction bound to the caller's firms. */
export type Within = <T>(work: (ctx: Ctx) => Promise<T>) => Promise<T>;

/** As `serveBytes`, for a file that is found in several transactions, because it has to be made first. */
export function serveFile<N extends BytesRoute>(
  app: FastifyInstance,
  deps: Deps,
  name: N,
  find: (within: Within, input: Asked<N>) => Promise<ServedFile>,
): void {
  const route: Route = routes[name];
  app.served.names.add(name);
  app.route({
    method: route.method,
    url: fastifyPath(route),
    schema: {
      ...(route.params ? { params: route.params } : {}),
      ...(route.query ? { querystring: route.query } : {}),
    },
    config: { route },
    handler: async (request, reply) => {
      const input = { params: request.params, query: request.query, request } as Asked<N>;
      const within: Within = (work) =>
        inTransaction(deps.db, sightOf(actorOf(request)), (tx) => work(contextOf(deps, request, tx)));
      const file = await find(within, input);
      const etag = `"${file.sha256}"`;
      reply.header('etag', etag);
      // Without an address that names these bytes for ever each use asks again, so that access that was ended is ended at once.
      reply.header(
        'cache-control',
        file.immutable ? 'private, max-age=31536000, immutable' : 'private, no-cache',
      );
      if (matches(request.headers['if-none-match'], etag)) return reply.code(304).send();
      const { stream, bytes } = await deps.store.read(file.sha256);
      reply.header('content-type', file.mediaType);
      reply.header('content-length', bytes);
      reply.header('x-content-type-options', 'nosniff');
      reply.header(
        'content-disposition',
        disposition(file.download ? 'attachment' : 'inline', file.fileName),
      );
      // A file from outside must never act as a page of ours.
      // (Chromium shows no PDF within a sandbox, so ours, opened in place, go without.)
      if (file.download || file.mediaType.startsWith('image/'))
        reply.header('content-security-policy', `${inertPolicy}; sandbox`);
      return reply.code(route.status).send(stream);
    },
  });
}

const matches = (header: string | undefined, etag: string): boolean =>
  header?.split(',').some((tag) => tag.trim().replace(/^W\//, '') === etag) ?? false;

/** A `Content-Disposition` by RFC 6266: the name in ASCII for old clients and in UTF-8 for all others. */
export function disposition(kind: 'inline' | 'attachment', fileName: string): string {
  const ascii = fileName.replace(/[^\x20-\x7e]|["\\%]/g, '_');
  const utf8 = encodeURIComponent(fileName).replace(
    /['()*]/g,
    (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `${kind}; filename="${ascii}"; filename*=UTF-8''${utf8}`;
}
