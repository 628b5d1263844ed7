import type {
  webhookEndpoint,
  webhookEndpointCreate,
  webhookEndpointPatch,
} from '@garboard/contract/webhooks';
import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { Sealer } from '@garboard/platform/sealing';
import type { z } from 'zod';
import { membershipsOf, type PersonActor } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { invalidField, notAllowed, notFound, wrongState } from '../problems.ts';
import { bothMs, newSecret, openSecret, sealSecret } from './secrets.ts';

export type EndpointView = z.input<typeof webhookEndpoint>;

const most = 20;

function person(ctx: Ctx): PersonActor {
  if (ctx.actor.kind !== 'person') throw notAllowed('Only a person has endpoints.');
  return ctx.actor;
}

/** Endpoints of the person's own, and of firms of which they are a principal. */
function mine(actor: PersonActor): Prisma.WebhookEndpointWhereInput {
  const firmIds = membershipsOf(actor)
    .filter((m) => m.role === 'principal')
    .map((m) => m.firmId);
  return { OR: [{ personId: actor.personId }, { personId: null, firmId: { in: firmIds } }] };
}

export async function loadEndpoint(ctx: Ctx, id: string) {
  const found = await ctx.tx.webhookEndpoint.findFirst({ where: { AND: [{ id }, mine(person(ctx))] } });
  if (!found) throw notFound('endpoint');
  return found;
}

type Row = Awaited<ReturnType<typeof loadEndpoint>>;

async function present(ctx: Ctx, rows: readonly Row[]): Promise<EndpointView[]> {
  const firms = await ctx.tx.firm.findMany({
    where: { id: { in: rows.map((row) => row.firmId) } },
    select: { id: true, name: true },
  });
  const names = new Map(firms.map((firm) => [firm.id, firm.name]));
  return rows.map((row) => ({
    id: row.id,
    firm: { id: row.firmId, name: names.get(row.firmId) ?? '' },
    role: row.role,
    label: row.label,
    url: row.url,
    kinds: row.kinds,
    state: row.state as EndpointView['state'],
    failingSince: row.failingSince?.toISOString() ?? null,
    problem: row.problem,
    oldSecretUntil:
      row.oldSecretUntil && row.oldSecretUntil > ctx.clock() ? row.oldSecretUntil.toISOString() : null,
    createdAt: row.createdAt.toISOString(),
  }));
}

const one = async (ctx: Ctx, row: Row) => (await present(ctx, [row]))[0] as EndpointView;

export async function listEndpoints(ctx: Ctx, input: PageInput): Promise<Page<EndpointView>> {
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.webhookEndpoint.findMany({
    where: { AND: [mine(person(ctx)), before ? { id: { lt: before } } : {}] },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: await present(ctx, page.items), next: page.next };
}

function refuseInsecure(url: string, allowPrivate: boolean): void {
  if (!allowPrivate && !url.startsWith('https:')) {
    throw invalidField('/url', 'The address must begin with https, so that nobody reads along.');
  }
}

/**
 * Has events of a firm sent to an address.
 *
 * @throws Refusal `not-allowed` when the person doesn't have that role with the firm; `wrong-state` beyond 20
 */
export async function createEndpoint(
  ctx: Ctx,
  {
    endpoint,
    sealer,
    allowPrivate,
  }: {
    endpoint: z.output<typeof webhookEndpointCreate>;
    sealer: Sealer;
    allowPrivate: boolean;
  },
): Promise<{ endpoint: EndpointView; secret: string }> {
  const actor = person(ctx);
  const { firmId, role, label, url, kinds } = endpoint;
  const firms = role === 'principal';
  const holds = firms
    ? membershipsOf(actor).some((m) => m.firmId === firmId && m.role === 'principal')
    : (await ctx.tx.party.count({ where: { firmId, personId: actor.personId, role } })) > 0;
  if (!holds) {
    throw notAllowed(
      firms
        ? 'Only a principal of that firm sets up its endpoints.'
        : `You are ${role} in no survey of that firm, so there is nothing to be told of.`,
    );
  }
  refuseInsecure(url, allowPrivate);
  if ((await ctx.tx.webhookEndpoint.count({ where: { AND: [{ firmId }, mine(actor)] } })) >= most) {
    throw wrongState(`There are ${most} endpoints with this firm already. Remove one first.`);
  }
  const [id, secret] = [newId(), newSecret()];
  const row = await ctx.tx.webhookEndpoint.create({
    data: {
      ...{ id, firmId, role, label, url },
      personId: firms ? null : actor.personId,
      kinds: [...new Set(kinds)],
      secret: sealSecret(sealer, id, secret),
      createdAt: ctx.clock(),
    },
  });
  await recordEvent(ctx, { firmId, kind: 'webhook.added', role, data: { label } });
  return { endpoint: await one(ctx, row), secret };
}

/** Changes, pauses or starts again; starting again sends what waited. */
export async function updateEndpoint(
  ctx: Ctx,
  {
    id,
    patch,
    allowPrivate,
  }: { id: string; patch: z.output<typeof webhookEndpointPatch>; allowPrivate: boolean },
): Promise<EndpointView> {
  const before = await loadEndpoint(ctx, id);
  if (patch.url) refuseInsecure(patch.url, allowPrivate);
  const starts = patch.state === 'active' && before.state !== 'active';
  const row = await ctx.tx.webhookEndpoint.update({
    where: { id },
    data: { ...patch, ...(starts ? { failingSince: null, problem: null } : {}) },
  });
  if (starts) {
    const waiting = await ctx.tx.webhookDelivery.updateManyAndReturn({
      where: { endpointId: id, state: 'waiting' },
      data: { nextAttemptAt: ctx.clock(), attempts: 0 },
      select: { id: true },
    });
    for (const { id: deliveryId } of waiting) {
      await enqueue(ctx.tx, 'webhook.deliver', { firmId: row.firmId, deliveryId });
    }
  }
  return one(ctx, row);
}

export async function deleteEndpoint(ctx: Ctx, id: string): Promise<void> {
  const { firmId, role, label } = await loadEndpoint(ctx, id);
  await ctx.tx.webhookEndpoint.delete({ where: { id } });
  await recordEvent(ctx, { firmId, kind: 'webhook.removed', role, data: { label } });
}

/** Gives an endpoint a new secret; the one before it signs too for a day. */
export async function rotateSecret(
  ctx: Ctx,
  { id, sealer }: { id: string; sealer: Sealer },
): Promise<{ endpoint: EndpointView; secret: string }> {
  const before = await loadEndpoint(ctx, id);
  const secret = newSecret();
  // Opened and sealed anew, so that a secret of another server isn't carried on.
  const old = openSecret(sealer, id, before.secret);
  const row = await ctx.tx.webhookEndpoint.update({
    where: { id },
    data: {
      secret: sealSecret(sealer, id, secret),
      oldSecret: sealSecret(sealer, id, old),
      oldSecretUntil: new Date(ctx.clock().getTime() + bothMs),
    },
  });
  return { endpoint: await one(ctx, row), secret };
}
