import { createVessel } from '@garboard/core/vessels/create-vessel';
import { getVessel } from '@garboard/core/vessels/get-vessel';
import { listVessels } from '@garboard/core/vessels/list-vessels';
import { updateVessel } from '@garboard/core/vessels/update-vessel';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function vesselRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'createVessel', (ctx, { body }) => createVessel(ctx, body));
  serve(app, deps, 'listVessels', (ctx, { query }) => listVessels(ctx, query));
  serve(app, deps, 'getVessel', (ctx, { params }) => getVessel(ctx, params.id));
  serve(app, deps, 'updateVessel', (ctx, { params, body, ifMatch }) =>
    updateVessel(ctx, { id: params.id, patch: body, ifMatch }),
  );
}
