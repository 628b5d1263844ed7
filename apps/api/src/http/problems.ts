import { type FieldError, type Problem, type ProblemType, problemTypes } from '@garboard/contract/problems';
import { Refusal } from '@garboard/core/problems';
import { isDatabaseAway } from '@garboard/db/database-away';
import { goneMeanwhile } from '@garboard/db/gone-meanwhile';
import { ObjectTooLargeError } from '@garboard/platform/object-store';
import { type StoreTrouble, storeTrouble } from '@garboard/platform/store-away';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';

/** Answers with RFC 9457 problem details. */
export function sendProblem(
  request: FastifyRequest,
  reply: FastifyReply,
  type: ProblemType,
  detail: string,
  errors?: FieldError[],
): FastifyReply {
  const { status, title } = problemTypes[type];
  const body: Problem = {
    type: `/problems/${type}`,
    title,
    status,
    detail,
    instance: `/requests/${request.id}`,
    ...(errors ? { errors } : {}),
  };
  return reply.code(status).type('application/problem+json').send(JSON.stringify(body));
}

/** Fastify's own refusals, told as ours. */
const frameworkProblems: Record<string, [ProblemType, string]> = {
  FST_ERR_CTP_INVALID_JSON_BODY: ['malformed-json', 'The body is not valid JSON.'],
  FST_ERR_CTP_EMPTY_JSON_BODY: ['malformed-json', 'The body is empty; send JSON.'],
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: ['malformed-json', 'The body is shorter or longer than announced.'],
  FST_ERR_CTP_INVALID_MEDIA_TYPE: [
    'wrong-media-type',
    'Send JSON, or a multipart form where files are expected.',
  ],
  FST_INVALID_MULTIPART_CONTENT_TYPE: [
    'wrong-media-type',
    'Send a multipart form with the files in parts named file.',
  ],
  FST_ERR_CTP_BODY_TOO_LARGE: ['too-large', 'The body is larger than this route accepts.'],
  FST_REQ_FILE_TOO_LARGE: ['too-large', 'A file of the form is larger than accepted.'],
  FST_FILES_LIMIT: [
    'too-large',
    'The form holds more files than accepted at once; send them in several goes.',
  ],
  FST_PARTS_LIMIT: ['too-large', 'The form has more parts than accepted.'],
  FST_PROTO_VIOLATION: ['malformed-json', 'The form has a field whose name is not accepted.'],
  FST_FIELDS_LIMIT: ['too-large', 'The form has more fields than accepted.'],
};

function fieldErrors(error: FastifyError & { validationContext?: string }): FieldError[] | null {
  if (!hasZodFastifySchemaValidationErrors(error)) return null;
  const where = error.validationContext === 'body' ? '' : `/${error.validationContext ?? ''}`;
  return error.validation.slice(0, mostErrors).map((v) => ({
    pointer: `${where}${v.instancePath}`,
    detail: v.message ?? 'This is not in a form that is accepted here.',
  }));
}

/** Of a thousand wrong fields, people mend the first few and try again. */
const [mostErrors, mostInDetail] = [50, 5];

function detailOf(fields: readonly FieldError[]): string {
  const told = fields.slice(0, mostInDetail).map((f) => `${f.pointer || '/'}: ${f.detail}`);
  return fields.length > told.length ? `${told.join(' ')} And more.` : told.join(' ');
}

/** Refusals that may be somebody trying doors: each leaves a line in the log, so that many of them are noticed. */
const worthNoting: ReadonlySet<string> = new Set<ProblemType>([
  ...(['wrong-credentials', 'wrong-code', 'wrong-passcode', 'proof-needed', 'not-allowed'] as const),
  ...(['foreign-origin', 'link-spent', 'too-many-requests', 'files-refused'] as const),
]);

function noteRefusal(request: FastifyRequest, refused: ProblemType): void {
  if (!worthNoting.has(refused)) return;
  const { actor } = request;
  const person = actor?.kind === 'person' ? actor.personId : undefined;
  request.log.warn({ refused, route: request.routeOptions.url, person }, 'refused');
}

/** What is told while something that every answer needs is away, and after how many seconds to come again. */
const awayWords: Record<StoreTrouble | 'database', { detail: string; seconds: number }> = {
  database: {
    detail: 'Garboard can’t reach its database just now. What was saved is safe; this can be sent again.',
    seconds: 5,
  },
  away: {
    detail:
      'Garboard can’t reach its photos and documents just now. What was saved is safe; this can be sent again.',
    seconds: 10,
  },
  full: {
    detail:
      'There is no room left for photos and documents. What was saved is safe; this can be sent again once whoever runs the server has made room.',
    seconds: 60,
  },
};

/** Which of the parts that every answer needs an error says is away. */
const whatIsAway = (error: unknown): keyof typeof awayWords | null =>
  storeTrouble(error) ?? (isDatabaseAway(error) ? 'database' : null);

/** The database takes no NUL in a text, whichever parameter it is compared with. */
function refuseNul(request: FastifyRequest): void {
  const at = request.url.indexOf('%00');
  if (at < 0) return;
  const query = request.url.indexOf('?');
  if (query < 0 || at < query) throw new Refusal('not-found', 'There is nothing at this address.');
  throw new Refusal('invalid-input', 'The query holds a control character. Write plain text.');
}

/** Turns every error into a problem; only what is truly unexpected is logged as an error. */
export function installProblemHandlers(app: FastifyInstance): void {
  // After every onRequest, so that the refusal carries the headers that all answers have.
  app.addHook('preParsing', async (request) => refuseNul(request));
  app.setErrorHandler((error: FastifyError, request, reply) => {
    if (error instanceof Refusal) {
      noteRefusal(request, error.type);
      return sendProblem(request, reply, error.type, error.message, error.errors);
    }
    if (error instanceof ObjectTooLargeError) return sendProblem(request, reply, 'too-large', error.message);
    const fields = fieldErrors(error);
    if (fields) {
      // An id that isn't one names nothing.
      if (fields.every((f) => f.pointer.startsWith('/params'))) {
        return sendProblem(request, reply, 'not-found', 'There is nothing at this address.');
      }
      return sendProblem(request, reply, 'invalid-input', detailOf(fields), fields);
    }
    const known = frameworkProblems[error.code];
    if (known) return sendProblem(request, reply, known[0], known[1]);
    if (error.statusCode === 429) {
      noteRefusal(request, 'too-many-requests');
      return sendProblem(request, reply, 'too-many-requests', error.message);
    }
    if (error.statusCode === 415) return sendProblem(request, reply, 'wrong-media-type', error.message);
    if (error.statusCode && error.statusCode >= 400 && error.statusCode < 500) {
      request.log.info({ err: error }, 'request could not be read');
      const unread = 'It can’t be read as it was sent. Compare it with the description at /docs.';
      return sendProblem(request, reply, 'malformed-json', unread);
    }
    const away = whatIsAway(error);
    if (away) {
      request.log.warn({ err: error, away }, 'request could not be served');
      const { detail, seconds } = awayWords[away];
      return sendProblem(request, reply.header('retry-after', seconds), 'unavailable', detail);
    }
    if (goneMeanwhile(error)) {
      request.log.warn({ err: error }, 'gone meanwhile');
      const detail = 'Somebody has removed this in the meantime, or what it belongs to. Nothing was changed.';
      return sendProblem(request, reply, 'not-found', detail);
    }
    request.log.error({ err: error }, 'request failed');
    const detail = 'Nothing was changed. Try again; if it happens again, quote the number of this request.';
    return sendProblem(request, reply, 'internal', detail);
  });
}
