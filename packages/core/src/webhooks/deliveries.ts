import type { webhookDelivery } from '@garboard/contract/webhooks';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { invalidField, notFound, wrongState } from '../problems.ts';
import { loadEndpoint } from './endpoints.ts';

export type DeliveryView = z.input<typeof webhookDelivery>;

interface Row {
  id: string;
  kind: string;
  eventId: string | null;
  state: string;
  attempts: number;
  status: number | null;
  problem: string | null;
  createdAt: Date;
  nextAttemptAt: Date;
  deliveredAt: Date | null;
}

const present = (row: Row): DeliveryView => ({
  id: row.id,
  kind: row.kind,
  eventId: row.eventId,
  state: row.state as DeliveryView['state'],
  attempts: row.attempts,
  status: row.status,
  problem: row.problem,
  createdAt: row.createdAt.toISOString(),
  nextAttemptAt: row.state === 'waiting' ? row.nextAttemptAt.toISOString() : null,
  deliveredAt: row.deliveredAt?.toISOString() ?? null,
});

/** What was sent to an endpoint and what became of it, newest first. */
export async function listDeliveries(
  ctx: Ctx,
  input: PageInput & { endpointId: string },
): Promise<Page<DeliveryView>> {
  const { id } = await loadEndpoint(ctx, input.endpointId);
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.webhookDelivery.findMany({
    where: { endpointId: id, ...(before ? { id: { lt: before } } : {}) },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: page.items.map(present), next: page.next };
}

async function activeEndpoint(ctx: Ctx, id: string) {
  const endpoint = await loadEndpoint(ctx, id);
  if (endpoint.state !== 'active') {
    throw wrongState('This endpoint is switched off. Start it again first.');
  }
  return endpoint;
}

/** Sends a trial message. */
export async function tryEndpoint(ctx: Ctx, endpointId: string): Promise<DeliveryView> {
  const { firmId, personId } = await activeEndpoint(ctx, endpointId);
  const now = ctx.clock();
  const row = await ctx.tx.webhookDelivery.create({
    data: { id: newId(), firmId, personId, endpointId, kind: 'trial', createdAt: now, nextAttemptAt: now },
  });
  await enqueue(ctx.tx, 'webhook.deliver', { firmId, deliveryId: row.id });
  return present(row);
}

const settled = { in: ['delivered', 'failed', 'dropped', 'waiting'] };

/** Sends a message again under its id. @throws Refusal `wrong-state` while it is being sent */
export async function replayDelivery(ctx: Ctx, id: string): Promise<DeliveryView> {
  const found = await ctx.tx.webhookDelivery.findUnique({ where: { id } });
  if (!found) throw notFound('delivery');
  await activeEndpoint(ctx, found.endpointId);
  const [row] = await ctx.tx.webhookDelivery.updateManyAndReturn({
    where: { id, state: settled },
    data: { state: 'waiting', attempts: 0, nextAttemptAt: ctx.clock() },
  });
  if (!row) throw wrongState('This message is being sent at this moment.');
  await enqueue(ctx.tx, 'webhook.deliver', { firmId: row.firmId, deliveryId: id });
  return present(row);
}

const mostAtOnce = 5_000;

/** Sends again what was meant for an endpoint in a period, whatever became of it. */
export async function replayPeriod(
  ctx: Ctx,
  { endpointId, since, until }: { endpointId: string; since: string; until: string },
): Promise<{ count: number }> {
  const { firmId } = await activeEndpoint(ctx, endpointId);
  if (since >= until) throw invalidField('/until', 'The period must end after it begins.');
  const where = { endpointId, state: settled, createdAt: { gte: new Date(since), lt: new Date(until) } };
  if ((await ctx.tx.webhookDelivery.count({ where })) > mostAtOnce) {
    throw invalidField('/since', `That is more than ${mostAtOnce} messages. Ask for a shorter period.`);
  }
  const rows = await ctx.tx.webhookDelivery.updateManyAndReturn({
    where,
    data: { state: 'waiting', attempts: 0, nextAttemptAt: ctx.clock() },
    select: { id: true },
  });
  for (const { id } of rows) await enqueue(ctx.tx, 'webhook.deliver', { firmId, deliveryId: id });
  return { count: rows.length };
}
