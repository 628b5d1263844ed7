import { newId } from '@garboard/db/ids';
import { isWebhookKind } from '@garboard/trade/webhook-kinds';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';

/**
 * Writes one delivery for each endpoint that asked for this kind of event, each once however often it is called, and
 * has it sent. What the receiver may see is settled when it leaves. For the handler of `event.fan-out`, acting as the
 * system for the firm.
 */
export async function fanOutWebhooks(
  ctx: Ctx,
  { firmId, eventId }: { firmId: string; eventId: string },
): Promise<{ deliveries: number }> {
  const event = await ctx.tx.event.findUnique({
    where: { id: eventId },
    select: { kind: true, surveyId: true },
  });
  if (!event?.surveyId || !isWebhookKind(event.kind)) return { deliveries: 0 };
  const parties = await ctx.tx.party.findMany({
    where: { surveyId: event.surveyId },
    select: { personId: true, role: true },
  });
  const endpoints = await ctx.tx.webhookEndpoint.findMany({
    where: {
      firmId,
      state: { in: ['active', 'paused'] },
      kinds: { has: event.kind },
      OR: [{ personId: null }, ...parties.map(({ personId, role }) => ({ personId, role }))],
    },
    select: { id: true, personId: true, state: true },
  });
  const now = ctx.clock();
  const made = await ctx.tx.webhookDelivery.createManyAndReturn({
    data: endpoints.map(({ id, personId }) => ({
      id: newId(),
      ...{ firmId, personId, endpointId: id, eventId, kind: event.kind },
      createdAt: now,
      nextAttemptAt: now,
    })),
    skipDuplicates: true,
    select: { id: true, endpointId: true },
  });
  const paused = new Set(endpoints.filter((e) => e.state === 'paused').map((e) => e.id));
  for (const { id, endpointId } of made) {
    // Those of a paused endpoint wait until it is started again.
    if (!paused.has(endpointId)) await enqueue(ctx.tx, 'webhook.deliver', { firmId, deliveryId: id });
  }
  return { deliveries: made.length };
}
