import { decideClearance } from '@garboard/core/clearance/decide-clearance';
import { extendFinding } from '@garboard/core/clearance/extend-finding';
import { getClearanceFile } from '@garboard/core/clearance/get-clearance-file';
import { listClearances } from '@garboard/core/clearance/list-clearances';
import { listExtensions } from '@garboard/core/clearance/list-extensions';
import { maySendClearance, sendClearance } from '@garboard/core/clearance/send-clearance';
import { addComment } from '@garboard/core/comments/add-comment';
import { listComments } from '@garboard/core/comments/list-comments';
import { removeComment } from '@garboard/core/comments/remove-comment';
import { listReInspections } from '@garboard/core/re-inspections/list-re-inspections';
import { recordReInspection } from '@garboard/core/re-inspections/record-re-inspection';
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
  serve(app, deps, 'extendFinding', (ctx, { params, body }) =>
    extendFinding(ctx, { findingId: params.id, extension: body }),
  );
  serve(app, deps, 'listExtensions', (ctx, { params, query }) =>
    listExtensions(ctx, { findingId: params.id, query }),
  );
  serve(app, deps, 'addFindingComment', (ctx, { params, body }) =>
    addComment(ctx, { findingId: params.id, comment: body }),
  );
  serve(app, deps, 'listFindingComments', (ctx, { params, query }) =>
    listComments(ctx, { findingId: params.id, query }),
  );
  serve(app, deps, 'removeFindingComment', (ctx, { params }) => removeComment(ctx, params.id));
  serve(app, deps, 'recordReInspection', (ctx, { params, body }) =>
    recordReInspection(ctx, { surveyId: params.id, visit: body }),
  );
  serve(app, deps, 'listReInspections', (ctx, { params, query }) =>
    listReInspections(ctx, { surveyId: params.id, query }),
  );
  serveBytes(app, deps, 'getClearanceFile', (ctx, { params, query }) =>
    getClearanceFile(ctx, { id: params.id, fileId: params.fileId, query }),
  );
}
