import { decideClearance } from '@garboard/core/clearance/decide-clearance';
import { getClearanceFile } from '@garboard/core/clearance/get-clearance-file';
import { listClearances } from '@garboard/core/clearance/list-clearances';
import { maySendClearance, sendClearance } from '@garboard/core/clearance/send-clearance';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveBytes } from '../http/serve-bytes.ts';
import { serveForm } from '../http/serve-form.ts';

export function clearanceRoutes(app: FastifyInstance, deps: Deps): void {
  serveForm(app, deps, 'sendClearance', {
    accepts: 'evidence',
    before: (ctx, params) => maySendClearance(ctx, params.id),
    handler: (ctx, { params, fields, upload }) =>
      sendClearance(ctx, { findingId: params.id, fields, upload }),
  });
  serve(app, deps, 'listClearances', (ctx, { params, query }) =>
    listClearances(ctx, { findingId: params.id, query }),
  );
  serve(app, deps, 'decideClearance', (ctx, { params, body }) =>
    decideClearance(ctx, { id: params.id, decision: body }),
  );
  serveBytes(app, deps, 'getClearanceFile', (ctx, { params, query }) =>
    getClearanceFile(ctx, { id: params.id, fileId: params.fileId, query }),
  );
}
