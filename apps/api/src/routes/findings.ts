import { listFindingEvents } from '@garboard/core/events/list-events';
import { createFinding } from '@garboard/core/findings/create-finding';
import { deleteFinding } from '@garboard/core/findings/delete-finding';
import { getFinding } from '@garboard/core/findings/get-finding';
import { listDeletedFindings } from '@garboard/core/findings/list-deleted';
import { listFindings } from '@garboard/core/findings/list-findings';
import { orderFindings } from '@garboard/core/findings/order-findings';
import { restoreFinding } from '@garboard/core/findings/restore-finding';
import { updateFinding } from '@garboard/core/findings/update-finding';
import { withdrawFinding } from '@garboard/core/findings/withdraw-finding';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve, serveReading } from '../http/serve.ts';
import { serveFile } from '../http/serve-bytes.ts';
import { previewFinding } from './preview-finding.ts';

export function findingRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'createFinding', (ctx, { params, body }) =>
    createFinding(ctx, { surveyId: params.id, finding: body }),
  );
  serveReading(app, deps, 'listFindings', (ctx, { params, query }) =>
    listFindings(ctx, { surveyId: params.id, ...query }),
  );
  serveReading(app, deps, 'getFinding', (ctx, { params }) => getFinding(ctx, params.id));
  serve(app, deps, 'updateFinding', (ctx, { params, body, ifMatch }) =>
    updateFinding(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'deleteFinding', (ctx, { params }) => deleteFinding(ctx, params.id));
  serveFile(app, deps, 'previewFinding', (within, { params }) => previewFinding(deps, within, params.id));
  serve(app, deps, 'withdrawFinding', (ctx, { params, body }) =>
    withdrawFinding(ctx, { id: params.id, reason: body.reason }),
  );
  serve(app, deps, 'restoreFinding', (ctx, { params }) => restoreFinding(ctx, params.id));
  serve(app, deps, 'listDeletedFindings', (ctx, { params, query }) =>
    listDeletedFindings(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'orderFindings', (ctx, { params, body }) =>
    orderFindings(ctx, { surveyId: params.id, ids: body.ids }),
  );
  serve(app, deps, 'listFindingEvents', (ctx, { params, query }) =>
    listFindingEvents(ctx, { findingId: params.id, ...query }),
  );
}
