import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import { negotiate } from '@fastify/accept-negotiator';
import type { FastifyInstance } from 'fastify';

const encodings = ['br', 'gzip'];
/** What is shorter goes in one packet anyway. */
const leastCharacters = 1_400;

const squeeze = {
  // The highest levels take fifty times as long for a tenth less.
  br: (bytes: Buffer) =>
    promisify(brotliCompress)(bytes, {
      params: { [constants.BROTLI_PARAM_QUALITY]: 4, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length },
    }),
  gzip: (bytes: Buffer) => promisify(gzip)(bytes, { level: 5 }),
};

/**
 * Compresses answers that are text, above all long lists, which shrink to a tenth; files are streams and are left as
 * they are. No answer holds a secret beside text that a stranger's page could choose: sessions are cookies, sent to our
 * own pages only.
 */
export function compressAnswers(app: FastifyInstance): void {
  app.addHook('onSend', (request, reply, payload, done) => {
    if (typeof payload !== 'string' || payload.length < leastCharacters) return done(null, payload);
    if (request.method === 'HEAD' || reply.hasHeader('content-encoding')) return done(null, payload);
    const varies = reply.getHeader('vary');
    reply.header('vary', varies ? `${varies}, accept-encoding` : 'accept-encoding');
    const encoding = negotiate(request.headers['accept-encoding'] ?? '', encodings);
    if (encoding !== 'br' && encoding !== 'gzip') return done(null, payload);
    squeeze[encoding](Buffer.from(payload)).then((bytes) => {
      reply.header('content-encoding', encoding);
      reply.removeHeader('content-length');
      done(null, bytes);
    }, done);
  });
}
