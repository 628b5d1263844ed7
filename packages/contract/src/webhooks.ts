import { partyRoles } from '@garboard/trade/vocabulary';
import { webhookKindList } from '@garboard/trade/webhook-kinds';
import { z } from 'zod';
import { id, instant, line, pageQuery } from './common.ts';

const url = z
  .url({
    protocol: /^https?$/,
    error: 'Write an address such as https://claims.underwriter.example/garboard.',
  })
  .max(2_000)
  .refine((text) => !URL.canParse(text) || !new URL(text).username, 'Leave name and password out of it.')
  .meta({ description: 'https; http only where the operator allows private addresses' });
const kinds = z.array(z.enum(webhookKindList)).min(1, 'Choose at least one.').max(50);

export const webhookEndpointCreate = z
  .object({
    firmId: id,
    role: z.enum(['principal', ...partyRoles]).meta({
      description: '`principal`: the firm’s own; else the party role in which you are told',
    }),
    label: line(120),
    url,
    kinds,
  })
  .meta({ id: 'WebhookEndpointCreate' });

export const webhookEndpointPatch = z
  .object({ label: line(120), url, kinds, state: z.enum(['active', 'paused']) })
  .partial()
  .meta({ id: 'WebhookEndpointPatch' });

export const webhookEndpoint = z
  .object({
    id,
    firm: z.object({ id, name: z.string() }),
    role: z.string(),
    label: z.string(),
    url: z.string(),
    kinds: z.array(z.string()),
    state: z.enum(['active', 'paused', 'disabled']),
    failingSince: instant.nullable(),
    problem: z.string().nullable(),
    oldSecretUntil: instant.nullable(),
    createdAt: instant,
  })
  .meta({ id: 'WebhookEndpoint' });

/** Shown this once. */
export const webhookSecret = z
  .object({ endpoint: webhookEndpoint, secret: z.string().meta({ description: '`whsec_` and Base64' }) })
  .meta({ id: 'WebhookSecret' });

export const webhookDelivery = z
  .object({
    id: id.meta({ description: 'The `webhook-id` of the message' }),
    kind: z.string(),
    eventId: id.nullable(),
    state: z.enum(['waiting', 'sending', 'delivered', 'failed', 'dropped']),
    attempts: z.int(),
    status: z.int().nullable(),
    problem: z.string().nullable(),
    createdAt: instant,
    nextAttemptAt: instant.nullable(),
    deliveredAt: instant.nullable(),
  })
  .meta({ id: 'WebhookDelivery' });

export const webhookDeliveryQuery = pageQuery;
export const webhookReplay = z.object({ since: instant, until: instant }).meta({ id: 'WebhookReplay' });
export const webhookReplayed = z.object({ count: z.int() }).meta({ id: 'WebhookReplayed' });

/** What an endpoint is sent. Ids only: what they stand for is read over the interface. */
export const webhookMessage = z
  .object({
    type: z.string(),
    timestamp: instant.meta({ description: 'When it happened' }),
    data: z.object({
      firmId: id,
      eventId: id.nullable(),
      surveyId: id.nullable(),
      findingId: id.nullable(),
      reportId: id.nullable(),
    }),
  })
  .meta({ id: 'WebhookMessage' });
