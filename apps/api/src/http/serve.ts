import { type Route, type RouteName, type Routes, routes } from '@garboard/contract/routes';
import { type Actor, sightOf } from '@garboard/core/access/actor';
import type { Ctx, ReadCtx } from '@garboard/core/context';
import { Refusal } from '@garboard/core/problems';
import { inTransaction } from '@garboard/db/database';
import { type Ahead, inReading } from '@garboard/db/reading';
import type { FastifyInstance, FastifyReply, FastifyRequest, FastifySchema } from 'fastify';
import type { z } from 'zod';
import type { Deps } from './deps.ts';
import { fingerprintOf, once } from './idempotency.ts';

type Part<R, K extends string> = R extends { [P in K]: infer V extends z.ZodType } ? z.output<V> : undefined;
type Answer<R> = R extends { response: infer V } ? (V extends z.ZodType ? z.input<V> : unknown) : unknown;

/** What a handler gets, validated by the contract. */
export interface Input<N extends RouteName> {
  params: Part<Routes[N], 'params'>;
  query: Part<Routes[N], 'query'>;
  body: Part<Routes[N], 'body'>;
  /** The version in `If-Match`, when one was sent. */
  ifMatch: number | undefined;
  request: FastifyRequest;
  reply: FastifyReply;
}
export type Handler<N extends RouteName, C = Ctx> = (ctx: C, input: Input<N>) => Promise<Answer<Routes[N]>>;

export const fastifyPath = (route: Route): string => route.path.replace(/\{(\w+)\}/g, ':$1');

function schemaOf(route: Route): FastifySchema {
  const response =
    route.response === undefined || route.response === 'bytes'
      ? {}
      : { response: { [route.status]: route.response } };
  return {
    ...(route.params ? { params: route.params } : {}),
    ...(route.query ? { querystring: route.query } : {}),
    ...(route.body ? { body: route.body } : {}),
    ...response,
  };
}

function ifMatchOf(request: FastifyRequest): number | undefined {
  const header = request.headers['if-match'];
  if (header === undefined || header === '*') return undefined;
  const version = /^(?:W\/)?"(\d{1,9})"$/.exec(header)?.[1];
  if (!version) {
    throw new Refusal(
      'stale-version',
      'If-Match must be the ETag of the version that you edited, such as "3".',
    );
  }
  return Number(version);
}

function setHeaders(route: Route, request: FastifyRequest, reply: FastifyReply, answer: unknown): void {
  if (typeof answer !== 'object' || answer === null) return;
  if (route.etag && 'version' in answer) reply.header('etag', `"${answer.version}"`);
  if ('next' in answer && typeof answer.next === 'string') {
    const url = new URL(request.url, 'http://here');
    url.searchParams.set('cursor', answer.next);
    reply.header('link', `<${url.pathname}${url.search}>; rel="next"`);
  }
}

/** The context of a use case within a running transaction. */
export function contextOf<T>(deps: Deps, request: FastifyRequest, tx: T): Omit<Ctx, 'tx'> & { tx: T } {
  return { actor: actorOf(request), tx, store: deps.store, clock: deps.clock, log: request.log };
}

/** The signed-in person; on a public route nobody, entitled to no firm's rows. */
export function actorOf(request: FastifyRequest): Actor {
  return request.actor ?? { kind: 'system', firmIds: [] };
}

export interface Served {
  names: Set<RouteName>;
}

/** Registers a route of the contract: validates, lets `run` find the answer, sets `ETag` and `Link`. */
function register<N extends RouteName>(
  app: FastifyInstance,
  name: N,
  run: (input: Input<N>) => Promise<Answer<Routes[N]>>,
  { reads = false } = {},
): void {
  const route: Route = routes[name];
  app.served.names.add(name);
  app.route({
    method: route.method,
    url: fastifyPath(route),
    schema: schemaOf(route),
    config: { route, name, reads },
    handler: async (request, reply) => {
      const { params, query, body } = request;
      const answer = await run({
        params,
        query,
        body,
        ifMatch: ifMatchOf(request),
        request,
        reply,
      } as Input<N>);
      if (reply.sent) return reply;
      reply.code(route.status);
      setHeaders(route, request, reply, answer);
      return route.status === 204 ? reply.send() : answer;
    },
  });
}

/**
 * Serves a route by a handler that runs in one transaction bound to the caller's sight; an `Idempotency-Key` already
 * used is answered with the first answer.
 */
export function serve<N extends RouteName>(
  app: FastifyInstance,
  deps: Deps,
  name: N,
  handler: Handler<N>,
): void {
  const route: Route = routes[name];
  register(app, name, (input) => {
    const { request, reply } = input;
    const key = route.idempotent ? request.headers['idempotency-key'] : undefined;
    return inTransaction(deps.db, sightOf(actorOf(request)), async (tx) => {
      const ctx = contextOf(deps, request, tx);
      const run = () => handler(ctx, input);
      if (typeof key !== 'string' || ctx.actor.kind !== 'person') return run();
      const fingerprint = fingerprintOf(request.method, request.url, request.body);
      return once(tx, { personId: ctx.actor.personId, key, route: name, fingerprint, reply }, run);
    });
  });
}

/**
 * The same for the pages that are asked for most: its handler only reads, by statements of its own, which are prepared
 * and travel together (`inReading`), the question who asks among them. Where that comes to another answer than was
 * guessed, or to none because nothing was read, it is asked alone, and the handler runs once more.
 */
export function serveReading<N extends RouteName>(
  app: FastifyInstance,
  deps: Deps,
  name: N,
  handler: Handler<N, ReadCtx>,
): void {
  const run = async (input: Input<N>) => {
    const { request } = input;
    const { guess } = request;
    const read = (ahead?: Ahead) =>
      inReading(
        deps.db,
        sightOf(actorOf(request)),
        (tx) => handler(contextOf(deps, request, tx), input),
        ahead,
      );
    if (!guess) return read();
    try {
      const answer = await read(guess);
      if (guess.holds) {
        await guess.noteUse();
        return answer;
      }
    } catch (error) {
      if (guess.holds) throw error;
    }
    await guess.again();
    return read();
  };
  register(app, name, run, { reads: true });
}

declare module 'fastify' {
  interface FastifyInstance {
    served: Served;
  }
  interface FastifyRequest {
    actor: Actor | null;
    sessionHash: string | null;
  }
  interface FastifyContextConfig {
    route?: Route;
  }
}
