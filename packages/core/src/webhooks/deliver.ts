import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { enqueue } from '../outbox/enqueue.ts';

const minute = 60_000;
const hour = 60 * minute;
/** A sender that dies is given up after this long, in milliseconds. */
const leaseMs = 2 * minute;
/** Waits after each failed attempt, as the specification suggests: ten attempts in about three days. */
export const waitsMs = [
  5_000,
  5 * minute,
  30 * minute,
  2 * hour,
  5 * hour,
  10 * hour,
  14 * hour,
  20 * hour,
  24 * hour,
];
/** An endpoint at which everything has failed for so long is switched off. */
export const disableAfterMs = 5 * 24 * hour;
/** One slow receiver may hold so many senders at once. */
const mostAtOnce = 2;

export interface ClaimedDelivery {
  id: string;
  firmId: string;
  endpointId: string;
  eventId: string | null;
  kind: string;
  attempts: number;
  createdAt: Date;
  endpoint: {
    personId: string | null;
    role: string;
    url: string;
    secret: Uint8Array;
    oldSecret: Uint8Array | null;
    oldSecretUntil: Date | null;
  };
}

/** Takes a delivery that is due; null when another has it, it is settled, not due, or its receiver is busy. */
export async function claimDelivery(
  { tx, clock }: Pick<Ctx, 'tx' | 'clock'>,
  deliveryId: string,
): Promise<ClaimedDelivery | null> {
  const now = clock();
  const due = { state: { in: ['waiting', 'sending'] }, nextAttemptAt: { lte: now } };
  const found = await tx.webhookDelivery.findFirst({ where: { id: deliveryId, ...due } });
  if (!found) return null;
  const busy = await tx.webhookDelivery.count({
    where: { endpointId: found.endpointId, state: 'sending', nextAttemptAt: { gt: now } },
  });
  if (busy >= mostAtOnce) return null;
  const [claimed] = await tx.webhookDelivery.updateManyAndReturn({
    where: { id: deliveryId, ...due, endpoint: { state: 'active' } },
    data: {
      state: 'sending',
      attempts: { increment: 1 },
      nextAttemptAt: new Date(now.getTime() + leaseMs),
    },
  });
  if (!claimed) return null;
  const endpoint = await tx.webhookEndpoint.findUniqueOrThrow({ where: { id: claimed.endpointId } });
  return { ...claimed, endpoint };
}

export type Outcome =
  | { state: 'delivered'; status: number }
  | { state: 'dropped' }
  /** `gone`: the receiver wants nothing more (410). */
  | { state: 'failed'; status: number | null; problem: string; gone: boolean };

/**
 * Writes down what became of an attempt, unless another sender has taken over. What failed is tried again, later each
 * time; an endpoint at which everything fails for days is switched off, and the record says so.
 */
export async function settleDelivery(ctx: Ctx, delivery: ClaimedDelivery, outcome: Outcome): Promise<void> {
  const now = ctx.clock();
  const wait = outcome.state === 'failed' && !outcome.gone ? waitsMs[delivery.attempts - 1] : undefined;
  const settled = await ctx.tx.webhookDelivery.updateMany({
    where: { id: delivery.id, state: 'sending', attempts: delivery.attempts },
    data: {
      state: wait === undefined ? outcome.state : 'waiting',
      status: 'status' in outcome ? outcome.status : null,
      problem: 'problem' in outcome ? outcome.problem : null,
      ...(wait === undefined ? {} : { nextAttemptAt: new Date(now.getTime() + wait) }),
      ...(outcome.state === 'delivered' ? { deliveredAt: now } : {}),
    },
  });
  if (settled.count === 0 || outcome.state === 'dropped') return;
  const where = { id: delivery.endpointId };
  if (outcome.state === 'delivered') {
    await ctx.tx.webhookEndpoint.updateMany({
      where: { ...where, failingSince: { not: null } },
      data: { failingSince: null, problem: null },
    });
    return;
  }
  await ctx.tx.webhookEndpoint.updateMany({
    where: { ...where, failingSince: null },
    data: { failingSince: now },
  });
  const { problem } = outcome;
  const longAgo = new Date(now.getTime() - disableAfterMs);
  const disabled = await ctx.tx.webhookEndpoint.updateManyAndReturn({
    where: { ...where, state: 'active', ...(outcome.gone ? {} : { failingSince: { lte: longAgo } }) },
    data: { state: 'disabled', problem },
  });
  const [endpoint] = disabled;
  if (!endpoint) {
    await ctx.tx.webhookEndpoint.updateMany({ where, data: { problem } });
    return;
  }
  const { firmId, personId, role, label } = endpoint;
  await recordEvent(ctx, { firmId, kind: 'webhook.disabled', role, data: { label, problem } });
  const principals = await ctx.tx.firmMember.findMany({
    where: { firmId, role: 'principal' },
    select: { personId: true },
  });
  for (const id of personId ? [personId] : principals.map((p) => p.personId)) {
    await enqueue(ctx.tx, 'mail.account-change', {
      messageId: endpoint.id,
      personId: id,
      change: 'webhook-disabled',
    });
  }
}

/** Longer than a delivery waits in the queue for its first attempt, in milliseconds. */
const lostAfterMs = 2 * minute;

/** Asks again for deliveries whose time has come. @returns how many */
export async function redeliverDue({ tx, clock }: Pick<Ctx, 'tx' | 'clock'>): Promise<number> {
  const now = clock();
  const due = await tx.webhookDelivery.findMany({
    where: {
      state: { in: ['waiting', 'sending'] },
      endpoint: { state: 'active' },
      OR: [
        { attempts: { gt: 0 }, nextAttemptAt: { lte: now } },
        { nextAttemptAt: { lte: new Date(now.getTime() - lostAfterMs) } },
      ],
    },
    select: { id: true, firmId: true },
    orderBy: { nextAttemptAt: 'asc' },
    take: 500,
  });
  for (const { id, firmId } of due) await enqueue(tx, 'webhook.deliver', { firmId, deliveryId: id });
  return due.length;
}
