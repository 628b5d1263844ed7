import { type Route, type RouteName, type Routes, routes } from '@garboard/contract/routes';
import { sightOf } from '@garboard/core/access/actor';
import type { Ctx } from '@garboard/core/context';
import { inspectUpload } from '@garboard/core/files/inspect-upload';
import type { ReceivedFile, Upload } from '@garboard/core/files/received-file';
import { inspectBrought } from '@garboard/core/imports/inspect-brought';
import { enqueue } from '@garboard/core/outbox/enqueue';
import { Refusal } from '@garboard/core/problems';
import { inTransaction } from '@garboard/db/database';
import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';
import type { Deps } from './deps.ts';
import { fingerprintOf, once } from './idempotency.ts';
import { type FormAccepts, receiveForm } from './receive-form.ts';
import { actorOf, contextOf, fastifyPath } from './serve.ts';

type FormRoute = {
  [N in RouteName]: Routes[N] extends { form: z.ZodObject; params: z.ZodObject; response: z.ZodType }
    ? N
    : never;
}[RouteName];

type Params<N extends FormRoute> = z.output<Routes[N]['params']>;

export interface FormHandling<N extends FormRoute> {
  accepts: FormAccepts;
  /** Whether the form would be welcome, asked before its bytes are read; and the zone for its capture times. */
  before: (ctx: Ctx, params: Params<N>) => Promise<{ timeZone: string }>;
  handler: (
    ctx: Ctx,
    input: { params: Params<N>; fields: z.output<Routes[N]['form']>; upload: Upload },
  ) => Promise<z.input<Routes[N]['response']>>;
}

function parseFields(form: z.ZodObject, fields: Record<string, string>): unknown {
  const parsed = form.safeParse(fields);
  if (parsed.success) return parsed.data;
  const errors = parsed.error.issues.map((issue) => ({
    pointer: `/${issue.path.join('/')}`,
    detail: issue.message,
  }));
  throw new Refusal('invalid-input', errors.map((e) => `${e.pointer}: ${e.detail}`).join(' '), errors);
}

/** Has files that were kept by a transaction which then failed removed again, unless another row names them. */
export async function collectKept(deps: Deps, files: readonly ReceivedFile[]): Promise<void> {
  const kept: string[] = [];
  for (const { staged } of files)
    if (staged && (await deps.store.has(staged.sha256))) kept.push(staged.sha256);
  if (kept.length === 0) return;
  await inTransaction(deps.db, [], async (tx) => {
    for (const sha256 of new Set(kept)) await enqueue(tx, 'object.collect', { sha256 });
  });
}

/**
 * Registers a route that takes a multipart form. No transaction is open while bytes come in or pictures are looked
 * at; the one that writes opens only then, and whatever it didn't keep is dropped.
 */
export function serveForm<N extends FormRoute>(
  app: FastifyInstance,
  deps: Deps,
  name: N,
  { accepts, before, handler }: FormHandling<N>,
): void {
  const route: Route = routes[name];
  const { form, params: paramsSchema, response } = route;
  if (!form || !paramsSchema || !response || response === 'bytes') throw new Error(`${name} takes no form.`);
  app.served.names.add(name);
  app.route({
    method: route.method,
    url: fastifyPath(route),
    schema: { params: paramsSchema, response: { [route.status]: response } },
    config: { route },
    handler: async (request, reply) => {
      const actor = actorOf(request);
      const params = request.params as Params<N>;
      const header = route.idempotent ? request.headers['idempotency-key'] : undefined;
      const key = typeof header === 'string' && actor.kind === 'person' ? header : undefined;
      const personId = actor.kind === 'person' ? actor.personId : '';
      if (!request.isMultipart()) {
        throw new Refusal('wrong-media-type', 'Send a multipart form with the files in parts named file.');
      }

      const { timeZone } = await inTransaction(deps.db, sightOf(actor), async (tx) => {
        // A repeat gets the first answer, though what it asks may be impossible by now because of the first.
        const seen =
          key && (await tx.idempotencyKey.findUnique({ where: { personId_key: { personId, key } } }));
        return seen ? { timeZone: 'UTC' } : before(contextOf(deps, request, tx), params);
      });

      const received = await receiveForm(request, deps.store, accepts);
      try {
        const fields = parseFields(form, received.fields) as z.output<Routes[N]['form']>;
        const upload =
          accepts === 'sheet'
            ? await inspectBrought(received.files)
            : await inspectUpload(received.files, { accepts, timeZone, now: deps.clock() });
        const answer = await inTransaction(deps.db, sightOf(actor), (tx) => {
          const run = () => handler(contextOf(deps, request, tx), { params, fields, upload });
          if (!key) return run();
          const files = received.files.map((file) => [file.name, file.staged?.sha256 ?? null]);
          const fingerprint = fingerprintOf(request.method, request.url, { fields, files });
          return once(tx, { personId, key, route: name, fingerprint, reply }, run);
        });
        reply.code(route.status);
        return answer;
      } catch (error) {
        await collectKept(deps, received.files).catch((err) =>
          request.log.error({ err }, 'files left to the sweep'),
        );
        throw error;
      } finally {
        await received.discard();
      }
    },
  });
}
