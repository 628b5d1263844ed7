import type { z } from 'zod';
import type { Problem } from './problems.ts';
import { type Route, type RouteName, type Routes, routes } from './routes.ts';
import { partMediaType, partOffsetHeader } from './uploads.ts';

type Has<R, K extends string> = R extends { [P in K]: infer V } ? V : undefined;
type Params<R> = Has<R, 'params'> extends z.ZodType ? { params: z.input<Has<R, 'params'>> } : unknown;
type Query<R> = Has<R, 'query'> extends z.ZodType ? { query?: z.input<Has<R, 'query'>> } : unknown;
type Body<R> = Has<R, 'body'> extends z.ZodType ? { body: z.input<Has<R, 'body'>> } : unknown;
type Form<R> = Has<R, 'form'> extends z.ZodType ? { form: FormData } : unknown;
type Part<R> = R extends { part: true }
  ? { part: { offset: number; bytes: Blob | Uint8Array<ArrayBuffer> } }
  : unknown;
type Response<R> = Has<R, 'response'> extends z.ZodType ? z.output<Has<R, 'response'>> : undefined;

export interface CallOptions {
  /** The ETag edited from; a stale one is refused with 412. */
  ifMatch?: string;
  /** Makes a create safe to repeat. */
  idempotencyKey?: string;
  signal?: AbortSignal;
}
export type CallArgs<N extends RouteName> = Params<Routes[N]> &
  Query<Routes[N]> &
  Body<Routes[N]> &
  Form<Routes[N]> &
  Part<Routes[N]> &
  CallOptions;
export type Answer<N extends RouteName> = Response<Routes[N]>;

/** A refusal by the server, with its problem details. */
export class ProblemError extends Error {
  readonly problem: Problem;
  readonly retryAfter: number | null;
  constructor(problem: Problem, retryAfter: number | null = null) {
    super(problem.detail || problem.title);
    this.name = 'ProblemError';
    this.problem = problem;
    this.retryAfter = retryAfter;
  }
}

/** The address of an operation, for links, images and uploads. */
export function pathOf(
  name: RouteName,
  params: Record<string, string> = {},
  query: Record<string, unknown> = {},
): string {
  const path = routes[name].path.replace(/\{(\w+)\}/g, (_, key: string) =>
    encodeURIComponent(params[key] ?? ''),
  );
  const search = new URLSearchParams();
  for (const [key, value] of Object.entries(query)) {
    if (value !== undefined && value !== null && value !== '') search.set(key, String(value));
  }
  return search.size ? `${path}?${search}` : path;
}

/** Reads a refusal, also one that isn't ours (a proxy's page, say). */
export async function problemFrom(response: globalThis.Response): Promise<ProblemError> {
  const retryAfter = Number(response.headers.get('retry-after')) || null;
  try {
    return new ProblemError((await response.json()) as Problem, retryAfter);
  } catch {
    const detail = `The server answered ${response.status} without saying why. Try again in a moment.`;
    const problem = {
      type: 'about:blank',
      title: response.statusText,
      status: response.status,
      detail,
      instance: '',
    };
    return new ProblemError(problem, retryAfter);
  }
}

export interface ClientSettings {
  /** Origin of the server, `''` for the page's own. */
  baseUrl?: string;
  /** A bearer token; without one the session cookie is used. */
  token?: string;
  fetch?: typeof globalThis.fetch;
}

/**
 * A client typed by the route table: `await client('getSurvey', {params: {id}})`.
 *
 * @throws ProblemError for every refusal; TypeError when the server can't be reached.
 */
export function createClient(settings: ClientSettings = {}) {
  const send = settings.fetch ?? globalThis.fetch.bind(globalThis);
  return async function call<N extends RouteName>(name: N, args: CallArgs<N>): Promise<Answer<N>> {
    const route: Route = routes[name];
    const given = args as CallOptions & {
      params?: Record<string, string>;
      query?: Record<string, unknown>;
      body?: unknown;
      form?: FormData;
      part?: { offset: number; bytes: Blob | Uint8Array<ArrayBuffer> };
    };
    const headers: Record<string, string> = { accept: 'application/json' };
    if (settings.token) headers.authorization = `Bearer ${settings.token}`;
    if (given.ifMatch) headers['if-match'] = given.ifMatch;
    if (given.idempotencyKey) headers['idempotency-key'] = given.idempotencyKey;
    if (given.body !== undefined) headers['content-type'] = 'application/json';
    if (given.part) {
      headers['content-type'] = partMediaType;
      headers[partOffsetHeader] = String(given.part.offset);
    }
    const response = await send((settings.baseUrl ?? '') + pathOf(name, given.params, given.query), {
      method: route.method,
      headers,
      credentials: 'same-origin',
      body: given.form ?? given.part?.bytes ?? (given.body === undefined ? null : JSON.stringify(given.body)),
      signal: given.signal ?? null,
    });
    if (!response.ok) throw await problemFrom(response);
    if (!route.response) return undefined as Answer<N>;
    if (route.response === 'bytes')
      throw new TypeError(`${name} answers a file: use its address, pathOf('${name}').`);
    return (await response.json()) as Answer<N>;
  };
}

/** The ETag of a record with this version, as If-Match wants it. */
export const etagOf = (record: { version: number }) => `"${record.version}"`;
