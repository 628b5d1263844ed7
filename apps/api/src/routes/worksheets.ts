import { createWorksheet } from '@garboard/core/worksheets/create-worksheet';
import { deleteWorksheet } from '@garboard/core/worksheets/delete-worksheet';
import { evaluateWorksheet } from '@garboard/core/worksheets/evaluate-worksheet';
import { getWorksheet } from '@garboard/core/worksheets/get-worksheet';
import { getWorksheetKind } from '@garboard/core/worksheets/get-worksheet-kind';
import { listWorksheetKinds } from '@garboard/core/worksheets/list-worksheet-kinds';
import { listWorksheets } from '@garboard/core/worksheets/list-worksheets';
import { updateWorksheet } from '@garboard/core/worksheets/update-worksheet';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function worksheetRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'listWorksheetKinds', async () => listWorksheetKinds());
  serve(app, deps, 'getWorksheetKind', async (_ctx, { params }) => getWorksheetKind(params.kind));
  serve(app, deps, 'evaluateWorksheet', async (_ctx, { params, body }) =>
    evaluateWorksheet({ kind: params.kind, inputs: body.inputs }),
  );
  serve(app, deps, 'createWorksheet', (ctx, { params, body }) =>
    createWorksheet(ctx, { surveyId: params.id, worksheet: body }),
  );
  serve(app, deps, 'listWorksheets', (ctx, { params, query }) =>
    listWorksheets(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'getWorksheet', (ctx, { params }) => getWorksheet(ctx, params.id));
  serve(app, deps, 'updateWorksheet', (ctx, { params, body, ifMatch }) =>
    updateWorksheet(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'deleteWorksheet', (ctx, { params }) => deleteWorksheet(ctx, params.id));
}
