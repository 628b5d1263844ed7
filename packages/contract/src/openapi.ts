import { z } from 'zod';
import { createDocument, type ZodOpenApiOperationObject, type ZodOpenApiPathsObject } from 'zod-openapi';
import { type ProblemType, problem, problemTypes } from './problems.ts';
import { type Route, routes } from './routes.ts';
import { partMediaType } from './uploads.ts';

/** Whether it honours `If-Match`. */
const editsVersions = (route: Route): boolean =>
  route.etag === true && (route.method === 'PATCH' || route.method === 'PUT');

/** Problems a route can meet by its very shape, before its own. */
function commonProblems(route: Route): ProblemType[] {
  const list: ProblemType[] = ['internal'];
  if (route.access === 'signed-in') list.push('not-signed-in');
  if (route.params) list.push('not-found');
  if (route.params || route.query || route.body || route.form || route.part) list.push('invalid-input');
  if (route.body) list.push('malformed-json');
  if (route.body || route.form || route.part) list.push('wrong-media-type');
  if (route.method !== 'GET') list.push('not-allowed');
  if (editsVersions(route)) list.push('stale-version');
  if (route.idempotent) list.push('key-reused');
  return list;
}

function problemResponses(route: Route) {
  const byStatus = new Map<number, string[]>();
  for (const type of [...commonProblems(route), ...(route.problems ?? [])]) {
    const { status, title } = problemTypes[type];
    byStatus.set(status, [...(byStatus.get(status) ?? []), title]);
  }
  return Object.fromEntries(
    [...byStatus].map(([status, titles]) => [
      status,
      { description: `${titles.join('; ')}.`, content: { 'application/problem+json': { schema: problem } } },
    ]),
  );
}

function requestBody(route: Route): ZodOpenApiOperationObject['requestBody'] {
  if (route.body) return { required: true, content: { 'application/json': { schema: route.body } } };
  if (route.part) {
    const bytes = z.string().meta({ format: 'binary' });
    return { required: true, content: { [partMediaType]: { schema: bytes } } };
  }
  if (!route.form) return undefined;
  const file = z
    .array(z.string().meta({ format: 'binary' }))
    .optional()
    .meta({ description: 'One or many files' });
  return {
    required: true,
    content: { 'multipart/form-data': { schema: z.object({ ...route.form.shape, file }) } },
  };
}

function success(route: Route) {
  const headers: Record<string, { description: string; schema: { type: 'string' } }> = {};
  if (route.etag) headers.ETag = { description: 'The version, for If-Match', schema: { type: 'string' } };
  if (route.query && 'cursor' in route.query.shape) {
    headers.Link = { description: 'rel="next": the page after (RFC 8288)', schema: { type: 'string' } };
  }
  if (!route.response) return { description: 'Done.' };
  const content =
    route.response === 'bytes'
      ? { 'application/octet-stream': { schema: { type: 'string' as const, format: 'binary' } } }
      : { 'application/json': { schema: route.response } };
  return { description: 'Done.', headers, content };
}

function operation(name: string, route: Route): ZodOpenApiOperationObject {
  const header: Record<string, z.ZodType> = {};
  if (route.idempotent) {
    header['Idempotency-Key'] = z.string().max(200).optional().meta({
      description:
        'A key of your own: repeating the request with it returns the first answer and does nothing twice',
    });
  }
  if (editsVersions(route)) {
    header['If-Match'] = z.string().optional().meta({ description: 'The ETag that you edited from' });
  }
  if (route.part) {
    header['Upload-Offset'] = z
      .string()
      .meta({ description: 'Bytes received so far: where this part begins' });
  }
  const body = requestBody(route);
  return {
    operationId: name,
    tags: [route.tag],
    summary: route.summary,
    ...(route.access === 'public' ? { security: [] } : {}),
    requestParams: {
      ...(route.params ? { path: route.params } : {}),
      ...(route.query ? { query: route.query } : {}),
      ...(Object.keys(header).length ? { header: z.object(header) } : {}),
    },
    ...(body ? { requestBody: body } : {}),
    responses: { [String(route.status)]: success(route), ...problemResponses(route) },
  };
}

/** The OpenAPI 3.1 description of the whole interface, from the schemas that validate it. */
export function buildOpenApi(publicUrl: string) {
  const paths: Record<string, Record<string, ZodOpenApiOperationObject>> = {};
  for (const [name, route] of Object.entries(routes) as [string, Route][]) {
    paths[route.path] = { ...paths[route.path], [route.method.toLowerCase()]: operation(name, route) };
  }
  return createDocument({
    openapi: '3.1.0',
    info: {
      title: 'Garboard',
      version: '1',
      description:
        'Surveys, findings, photos, reports and the clearance of recommendations. Lists are paged with `limit` ' +
        'and `cursor`; every error is `application/problem+json`; edits take `If-Match`, creates take ' +
        '`Idempotency-Key`.',
    },
    servers: [{ url: publicUrl }],
    security: [{ bearer: [] }, { cookie: [] }],
    components: {
      securitySchemes: {
        bearer: { type: 'http', scheme: 'bearer' },
        cookie: { type: 'apiKey', in: 'cookie', name: 'garboard_session' },
      },
    },
    paths: paths as ZodOpenApiPathsObject,
  });
}
