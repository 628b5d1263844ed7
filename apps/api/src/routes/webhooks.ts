import {
  listDeliveries,
  replayDelivery,
  replayPeriod,
  tryEndpoint,
} from '@garboard/core/webhooks/deliveries';
import {
  createEndpoint,
  deleteEndpoint,
  listEndpoints,
  rotateSecret,
  updateEndpoint,
} from '@garboard/core/webhooks/endpoints';
import { openSealer } from '@garboard/platform/sealing';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function webhookRoutes(app: FastifyInstance, deps: Deps): void {
  const allowPrivate = deps.env.webhookAllowPrivate;
  serve(app, deps, 'listWebhookEndpoints', (ctx, { query }) => listEndpoints(ctx, query));
  serve(app, deps, 'createWebhookEndpoint', async (ctx, { body }) =>
    createEndpoint(ctx, { endpoint: body, sealer: await openSealer(deps.env), allowPrivate }),
  );
  serve(app, deps, 'updateWebhookEndpoint', (ctx, { params, body }) =>
    updateEndpoint(ctx, { id: params.id, patch: body, allowPrivate }),
  );
  serve(app, deps, 'deleteWebhookEndpoint', (ctx, { params }) => deleteEndpoint(ctx, params.id));
  serve(app, deps, 'rotateWebhookSecret', async (ctx, { params }) =>
    rotateSecret(ctx, { id: params.id, sealer: await openSealer(deps.env) }),
  );
  serve(app, deps, 'tryWebhookEndpoint', (ctx, { params }) => tryEndpoint(ctx, params.id));
  serve(app, deps, 'listWebhookDeliveries', (ctx, { params, query }) =>
    listDeliveries(ctx, { endpointId: params.id, ...query }),
  );
  serve(app, deps, 'replayWebhookDeliveries', (ctx, { params, body }) =>
    replayPeriod(ctx, { endpointId: params.id, ...body }),
  );
  serve(app, deps, 'replayWebhookDelivery', (ctx, { params }) => replayDelivery(ctx, params.id));
}
