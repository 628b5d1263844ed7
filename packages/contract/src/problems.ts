import { z } from 'zod';

/**
 * Every way a request can fail, as RFC 9457 problem types. `status` is fixed by the type; the detail says what
 * happened this time and what to do.
 */
export const problemTypes = {
  'malformed-json': { status: 400, title: 'The request could not be read' },
  'not-signed-in': { status: 401, title: 'Sign in first' },
  'wrong-credentials': { status: 401, title: 'The address or the password is wrong' },
  'code-needed': { status: 401, title: 'A code is needed too' },
  'wrong-code': { status: 401, title: 'The code is not right' },
  'wrong-passcode': { status: 401, title: 'The passcode is not right' },
  'not-allowed': { status: 403, title: 'You may not do this' },
  'proof-needed': { status: 403, title: 'Show first that it is you' },
  'foreign-origin': { status: 403, title: 'The request came from another site' },
  'not-found': { status: 404, title: 'There is nothing here' },
  'method-not-allowed': { status: 405, title: 'This cannot be done here' },
  'wrong-state': { status: 409, title: 'Not possible as things stand' },
  'already-decided': { status: 409, title: 'Already decided' },
  'stale-version': { status: 412, title: 'Someone changed this in the meantime' },
  'too-large': { status: 413, title: 'Too large' },
  'wrong-media-type': { status: 415, title: 'This kind of content is not accepted' },
  'invalid-input': { status: 422, title: 'Some of the input needs correcting' },
  'files-refused': { status: 422, title: 'The files could not be accepted' },
  'key-reused': { status: 422, title: 'This Idempotency-Key belongs to another request' },
  'too-many-requests': { status: 429, title: 'Too many attempts' },
  'link-spent': { status: 410, title: 'This link no longer works' },
  internal: { status: 500, title: 'Something went wrong on our side' },
  unavailable: { status: 503, title: 'Not available just now' },
} as const;

export type ProblemType = keyof typeof problemTypes;

export const fieldError = z.object({
  pointer: z.string().meta({ description: 'JSON pointer to the field, or the name of the file' }),
  detail: z.string(),
});

export const problem = z
  .object({
    type: z.string().meta({ example: '/problems/invalid-input' }),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    instance: z.string().meta({ description: 'The id of the request, as in the log' }),
    errors: z.array(fieldError).optional(),
  })
  .meta({ id: 'Problem', description: 'RFC 9457 problem details' });

export type Problem = z.infer<typeof problem>;
export type FieldError = z.infer<typeof fieldError>;
