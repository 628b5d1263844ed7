import { answerCoverage } from '@garboard/core/coverage/answer-coverage';
import { getCoverage } from '@garboard/core/coverage/get-coverage';
import { replaceCoverage } from '@garboard/core/coverage/replace-coverage';
import { createInventoryItem } from '@garboard/core/inventory/create-inventory-item';
import { deleteInventoryItem } from '@garboard/core/inventory/delete-inventory-item';
import { getInventoryItem } from '@garboard/core/inventory/get-inventory-item';
import { listExpiries } from '@garboard/core/inventory/list-expiries';
import { listInventory } from '@garboard/core/inventory/list-inventory';
import { updateInventoryItem } from '@garboard/core/inventory/update-inventory-item';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function coverageRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'getCoverage', (ctx, { params }) => getCoverage(ctx, params.id));
  serve(app, deps, 'replaceCoverage', (ctx, { params, body }) =>
    replaceCoverage(ctx, { surveyId: params.id, items: body.items }),
  );
  serve(app, deps, 'answerCoverage', (ctx, { params, body, ifMatch }) =>
    answerCoverage(ctx, { surveyId: params.id, system: params.system, answer: body, ifMatch }),
  );
  serve(app, deps, 'createInventoryItem', (ctx, { params, body }) =>
    createInventoryItem(ctx, { surveyId: params.id, item: body }),
  );
  serve(app, deps, 'listInventory', (ctx, { params, query }) =>
    listInventory(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'getInventoryItem', (ctx, { params }) => getInventoryItem(ctx, params.id));
  serve(app, deps, 'updateInventoryItem', (ctx, { params, body, ifMatch }) =>
    updateInventoryItem(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'deleteInventoryItem', (ctx, { params }) => deleteInventoryItem(ctx, params.id));
  serve(app, deps, 'listExpiries', (ctx, { query }) => listExpiries(ctx, query));
}
