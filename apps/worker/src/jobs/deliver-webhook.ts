import type { JobData } from '@garboard/contract/jobs';
import { sightOf } from '@garboard/core/access/actor';
import {
  type ClaimedDelivery,
  claimDelivery,
  type Outcome,
  settleDelivery,
} from '@garboard/core/webhooks/deliver';
import { messageFor, receiverOf } from '@garboard/core/webhooks/message-for';
import { openSecret, signedHeaders } from '@garboard/core/webhooks/secrets';
import { inTransaction } from '@garboard/db/database';
import { outwardPost } from '@garboard/platform/outward-post';
import { openSealer } from '@garboard/platform/sealing';
import type { JobDeps } from '../job-deps.ts';

type SendDeps = Pick<JobDeps, 'db' | 'store' | 'clock' | 'log' | 'env'>;

/**
 * Sends one message to one endpoint. Whether the receiver may see what it is about is asked now. A failed attempt is
 * written down and tried again by the sweep, so that the queue holds nothing for days.
 */
export async function deliverWebhookJob(
  deps: SendDeps,
  { firmId, deliveryId }: JobData<'webhook.deliver'>,
): Promise<void> {
  const { db, store, clock, log } = deps;
  const delivery = await inTransaction(db, [firmId], (tx) => claimDelivery({ tx, clock }, deliveryId));
  if (!delivery)
    return log.info({ deliveryId }, 'message sent already, not due yet, or its receiver is busy');
  const outcome = await send(deps, delivery);
  if (outcome.state === 'failed') log.warn({ deliveryId, ...outcome }, 'message not delivered');
  const actor = { kind: 'system', firmIds: [firmId] } as const;
  await inTransaction(db, [firmId], (tx) =>
    settleDelivery({ tx, actor, store, clock, log }, delivery, outcome),
  );
}

async function send(deps: SendDeps, delivery: ClaimedDelivery): Promise<Outcome> {
  const { clock, env } = deps;
  const { endpoint } = delivery;
  const message = await messageOf(deps, delivery);
  if (!message) return { state: 'dropped' };
  try {
    const sealer = await openSealer(env);
    const now = clock();
    const both = endpoint.oldSecret && endpoint.oldSecretUntil && endpoint.oldSecretUntil > now;
    const sealed = both && endpoint.oldSecret ? [endpoint.secret, endpoint.oldSecret] : [endpoint.secret];
    const secrets = sealed.map((secret) => openSecret(sealer, delivery.endpointId, secret));
    const body = JSON.stringify(message);
    const headers = signedHeaders({ id: delivery.id, at: now, body, secrets });
    const { status } = await outwardPost({
      ...{ url: endpoint.url, headers, body },
      allowPrivate: env.webhookAllowPrivate,
    });
    if (status >= 200 && status < 300) return { state: 'delivered', status };
    const redirect = status >= 300 && status < 400;
    const problem = redirect
      ? `Answered ${status}, a redirect, which is not followed.`
      : `Answered ${status}.`;
    return { state: 'failed', status, problem, gone: status === 410 };
  } catch (error) {
    const problem = error instanceof Error ? error.message.slice(0, 300) : String(error);
    return { state: 'failed', status: null, problem, gone: false };
  }
}

async function messageOf({ db }: SendDeps, delivery: ClaimedDelivery) {
  const { eventId, firmId, kind, endpoint } = delivery;
  if (!eventId) {
    const data = { firmId, eventId: null, surveyId: null, findingId: null, reportId: null };
    return { type: kind, timestamp: delivery.createdAt.toISOString(), data };
  }
  const event = await inTransaction(db, [firmId], (tx) => tx.event.findUnique({ where: { id: eventId } }));
  const actor = receiverOf(firmId, endpoint);
  return event && inTransaction(db, sightOf(actor), (tx) => messageFor({ tx, actor }, event));
}
