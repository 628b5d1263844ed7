import type { Action } from '@garboard/trade/permissions';
import type { z } from 'zod';
import type { ProblemType } from '../problems.ts';

/** One operation of the REST interface. Server, client and OpenAPI document are all derived from it. */
export interface Route {
  method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  /** With parameters in braces, as OpenAPI writes them. */
  path: `/${string}`;
  tag: string;
  summary: string;
  access: 'public' | 'signed-in';
  /**
   * The line of the permission table that decides who may: the isolation matrix asks it what to expect. `own-account`
   * is anybody signed in, about themselves; lists that hold only what the caller may see are so too.
   */
  permission: Action | 'public' | 'own-account';
  params?: z.ZodObject;
  query?: z.ZodObject;
  body?: z.ZodType;
  /** A multipart form: text parts by this schema, files in parts named `file`. */
  form?: z.ZodObject;
  /** The body is a part of a file, bytes, beginning at the offset in `Upload-Offset`. */
  part?: true;
  status: 200 | 201 | 202 | 204;
  /** What a success answers; `bytes` is a file, absent is no content. */
  response?: z.ZodType | 'bytes';
  /** Only works something out, though it isn't a GET: a key that may only read may ask it. */
  keepsNothing?: true;
  /** A create that honours `Idempotency-Key`. */
  idempotent?: true;
  /** Answers with `ETag`; an edit honours `If-Match`. */
  etag?: true;
  /** Problems beyond those every route of its kind can meet. */
  problems?: ProblemType[];
}

/** Keeps a route's literal types, so that its handler and the client know its schemas. */
export const route = <const R extends Route>(r: R) => r;
