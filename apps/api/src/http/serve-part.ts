import { type Route, type RouteName, routes } from '@garboard/contract/routes';
import { partBytes, partMediaType, partOffsetHeader } from '@garboard/contract/uploads';
import { sightOf } from '@garboard/core/access/actor';
import type { Ctx } from '@garboard/core/context';
import { inspectUpload } from '@garboard/core/files/inspect-upload';
import { Refusal } from '@garboard/core/problems';
import { finishUpload } from '@garboard/core/uploads/finish-upload';
import { presentUpload, type UploadRow } from '@garboard/core/uploads/load-upload';
import { restartUpload, takePart, WrongOffset } from '@garboard/core/uploads/take-part';
import { inTransaction } from '@garboard/db/database';
import { PartsMissingError } from '@garboard/platform/object-store';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Deps } from './deps.ts';
import { actorOf, contextOf, fastifyPath } from './serve.ts';
import { collectKept } from './serve-form.ts';

function offsetOf(request: FastifyRequest): number | null {
  const header = request.headers[partOffsetHeader];
  return typeof header === 'string' && /^\d{1,12}$/.test(header) ? Number(header) : null;
}

/** Puts a whole upload together and makes it a photo. No transaction is open while its bytes are looked at. */
async function finish(deps: Deps, request: FastifyRequest, upload: UploadRow, timeZone: string) {
  const { id, bytes, fileName } = upload;
  const sight = sightOf(actorOf(request));
  const staged = await deps.store.stage(deps.store.readParts(id, bytes), { maxBytes: bytes });
  const received = { name: fileName, staged, maxBytes: bytes };
  try {
    const file = await inspectUpload([received], { accepts: 'pictures', timeZone, now: deps.clock() });
    const record = await inTransaction(deps.db, sight, (tx) =>
      finishUpload(contextOf(deps, request, tx), { id, file, sha256: staged.sha256 }),
    );
    await deps.store.dropParts(id);
    return record;
  } catch (error) {
    await collectKept(deps, [received]).catch((err) => request.log.error({ err }, 'files left to the sweep'));
    throw error;
  } finally {
    await staged.discard();
  }
}

/**
 * Registers the route that takes parts of an upload; the last makes it a photo. Should the server end between the
 * two, an empty part at the end of the file does the rest.
 */
export function servePart(app: FastifyInstance, deps: Deps, name: RouteName & 'sendUploadPart'): void {
  const route: Route = routes[name];
  app.served.names.add(name);
  app.addContentTypeParser(
    partMediaType,
    { parseAs: 'buffer', bodyLimit: partBytes },
    (_request, body, done) => done(null, body),
  );
  app.route({
    method: route.method,
    url: fastifyPath(route),
    schema: { params: route.params, response: { [route.status]: route.response } },
    config: { route },
    handler: async (request, reply) => {
      const { id } = request.params as { id: string };
      const sight = sightOf(actorOf(request));
      const within = <T>(work: (ctx: Ctx) => Promise<T>) =>
        inTransaction(deps.db, sight, (tx) => work(contextOf(deps, request, tx)));
      if (request.body !== undefined && !Buffer.isBuffer(request.body)) {
        throw new Refusal('wrong-media-type', `Send the part as ${partMediaType}.`);
      }
      const bytes = request.body ?? Buffer.alloc(0);
      try {
        const { upload, timeZone } = await within((ctx) =>
          takePart(ctx, { id, offset: offsetOf(request), bytes }),
        );
        const whole = upload.state === 'receiving' && upload.received === upload.bytes;
        const record = whole ? await finish(deps, request, upload, timeZone) : presentUpload(upload);
        if (record.state === 'refused') throw new Refusal('files-refused', record.problem ?? '');
        reply.header(partOffsetHeader, record.received);
        return record;
      } catch (error) {
        if (error instanceof WrongOffset) reply.header(partOffsetHeader, error.received);
        if (!(error instanceof PartsMissingError)) throw error;
        request.log.warn({ id }, 'parts of an upload are gone, it begins again');
        const record = presentUpload(await within((ctx) => restartUpload(ctx, id)));
        reply.header(partOffsetHeader, record.received);
        return record;
      }
    },
  });
}
