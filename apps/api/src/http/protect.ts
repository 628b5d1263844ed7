import { randomUUID } from 'node:crypto';
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { Socket } from 'node:net';
import { type Problem, problemTypes } from '@garboard/contract/problems';
import type { FastifyHttpOptions, FastifyInstance, FastifyReply, FastifyServerOptions } from 'fastify';
import helmet from 'helmet';
import type { Deps } from './deps.ts';
import { sendProblem } from './problems.ts';

const secondMs = 1000;

/**
 * How much a client may ask of a connection. Photos are sent over harbour signal, so a whole request has half an hour;
 * its head has no excuse to be slow, nor a connection to be silent.
 */
export const serverLimits = {
  bodyLimit: 2 * 1024 * 1024,
  requestTimeout: 30 * 60 * secondMs,
  connectionTimeout: 2 * 60 * secondMs,
  http: {
    headersTimeout: 15 * secondMs,
    maxHeaderSize: 16 * 1024,
    connectionsCheckingInterval: secondMs,
    // A head with two lengths, or a length and chunks, is refused by Node itself.
    insecureHTTPParser: false,
  },
} as const satisfies Partial<FastifyHttpOptions<Server>>;

/** What no page of ours needs of the device; photographs are taken by the device's own chooser of files. */
const permissions = [
  ...[
    'accelerometer',
    'autoplay',
    'camera',
    'display-capture',
    'encrypted-media',
    'fullscreen',
    'geolocation',
  ],
  ...['gyroscope', 'magnetometer', 'microphone', 'midi', 'payment', 'picture-in-picture', 'usb'],
]
  .map((name) => `${name}=()`)
  .join(', ');

/** For what is not a page of ours: nothing in it is loaded or run, and nothing frames it. */
export const inertPolicy = "default-src 'none'; base-uri 'none'; frame-ancestors 'none'; form-action 'none'";

const yearSeconds = 365 * 86_400;
const strictTransport = `max-age=${yearSeconds}; includeSubDomains`;
const isSecure = (deps: Deps) => deps.env.publicUrl.startsWith('https:');

/** What tells browsers to make nothing of an answer that is no page: it is data for our pages, or a refusal. */
const refusalsOfData = (deps: Deps): Record<string, string> => ({
  'content-security-policy': inertPolicy,
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  ...(isSecure(deps) ? { 'strict-transport-security': strictTransport } : {}),
});

/** What tells browsers what to refuse on pages and files. It is the same for all of them, so helmet is asked once. */
function refusalsOfPages(deps: Deps): Record<string, string> {
  const headers: Record<string, string> = { 'permissions-policy': permissions };
  const fill = helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        baseUri: ["'none'"],
        connectSrc: ["'self'"],
        fontSrc: ["'self'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
        imgSrc: ["'self'", 'blob:', 'data:'],
        manifestSrc: ["'self'"],
        objectSrc: ["'none'"],
        scriptSrc: ["'self'"],
        scriptSrcAttr: ["'none'"],
        styleSrc: ["'self'"],
        workerSrc: ["'self'"],
        ...(isSecure(deps) ? { upgradeInsecureRequests: [] } : {}),
      },
    },
    frameguard: { action: 'deny' },
    strictTransportSecurity: isSecure(deps) && { maxAge: yearSeconds, includeSubDomains: true },
  });
  const noted = {
    setHeader: (name: string, value: string) => {
      headers[name.toLowerCase()] = value;
    },
    removeHeader: () => undefined,
  };
  fill({} as IncomingMessage, noted as unknown as ServerResponse, (error?: unknown) => {
    if (error) throw error;
  });
  return headers;
}

/** The number of the request and what browsers are to refuse, on every answer. */
export function installProtection(app: FastifyInstance, deps: Deps): void {
  const [ofData, ofPages] = [refusalsOfData(deps), refusalsOfPages(deps)];
  app.addHook('onRequest', (request, reply, done) => {
    // Routes with a name answer with records; a kilobyte of what pages need would go with each of them for nothing.
    reply.headers(request.routeOptions.config.name ? ofData : ofPages);
    reply.header('x-request-id', request.id);
    done();
  });
  app.addHook('onSend', (request, reply, _payload, done) => {
    // What one person sees must not be kept for another.
    if (!reply.hasHeader('cache-control'))
      reply.header('cache-control', request.routeOptions.config.route ? 'private, no-store' : 'no-cache');
    done();
  });
}

/** The head of an answer that is made before any of the hooks above could run. */
const earlyHeaders = (deps: Deps): Record<string, string> => ({
  'cache-control': 'no-store',
  ...refusalsOfData(deps),
});

/** For addresses that can't be decoded: Fastify refuses them before it looks for a route. */
export function refuseAddress(deps: Deps): NonNullable<FastifyServerOptions['frameworkErrors']> {
  return (_error, request, reply) => {
    const answer = reply as unknown as FastifyReply;
    answer.headers(earlyHeaders(deps));
    sendProblem(request as never, answer, 'not-found', 'There is nothing at this address.');
  };
}

const early: Record<string, { status: number; line: string; detail: string }> = {
  HPE_HEADER_OVERFLOW: {
    ...{ status: 431, line: 'Request Header Fields Too Large' },
    detail: 'The head of the request is larger than 16 KiB.',
  },
  ERR_HTTP_REQUEST_TIMEOUT: {
    ...{ status: 408, line: 'Request Timeout' },
    detail: 'The request did not arrive in time. Send it again.',
  },
};

/** For what is no HTTP, comes too slowly or is too large in its head: answered in our form, then hung up. */
export function refuseConnection(deps: Deps): NonNullable<FastifyServerOptions['clientErrorHandler']> {
  return (error, given) => {
    const socket = given as Socket;
    // Nobody is there to be told.
    if (error.code === 'ECONNRESET' || socket.destroyed) return;
    const { status, line, detail } = early[error.code ?? ''] ?? {
      ...{ status: 400, line: 'Bad Request' },
      detail: 'This is not a request by HTTP/1.1.',
    };
    const body: Problem = {
      type: '/problems/malformed-json',
      title: problemTypes['malformed-json'].title,
      ...{ status, detail, instance: `/requests/${randomUUID()}` },
    };
    const text = JSON.stringify(body);
    const head = Object.entries({
      ...earlyHeaders(deps),
      'content-type': 'application/problem+json; charset=utf-8',
      'content-length': String(Buffer.byteLength(text)),
      connection: 'close',
    });
    const lines = head.map(([name, value]) => `${name}: ${value}`).join('\r\n');
    if (socket.writable) socket.write(`HTTP/1.1 ${status} ${line}\r\n${lines}\r\n\r\n${text}`);
    socket.destroySoon();
  };
}
