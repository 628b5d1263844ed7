import { createImport, mayImport } from '@garboard/core/imports/create-import';
import { discardImport } from '@garboard/core/imports/discard-import';
import { getImport } from '@garboard/core/imports/get-import';
import { namePhotos } from '@garboard/core/imports/name-photos';
import { startImport } from '@garboard/core/imports/start-import';
import { leftOutSheet, sampleSheet, surveySheet } from '@garboard/core/imports/write-sheet';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveForm } from '../http/serve-form.ts';
import { serveText } from '../http/serve-text.ts';

export function importRoutes(app: FastifyInstance, deps: Deps): void {
  serveForm(app, deps, 'createImport', {
    accepts: 'sheet',
    before: (ctx, params) => mayImport(ctx, params.id),
    handler: (ctx, { params, upload }) => createImport(ctx, { surveyId: params.id, upload }),
  });
  serve(app, deps, 'getImport', (ctx, { params }) => getImport(ctx, params.id));
  serve(app, deps, 'nameImportPhotos', (ctx, { params, body }) =>
    namePhotos(ctx, { id: params.id, photos: body }),
  );
  serve(app, deps, 'startImport', (ctx, { params, body }) =>
    startImport(ctx, { id: params.id, choices: body }),
  );
  serve(app, deps, 'discardImport', async (ctx, { params }) => {
    await discardImport(ctx, params.id);
    return undefined;
  });
  serveText(app, deps, 'getImportLeftOut', (ctx, params) => leftOutSheet(ctx, params.id));
  serveText(app, deps, 'getFindingsSample', async () => sampleSheet());
  serveText(app, deps, 'getFindingsSheet', (ctx, params) => surveySheet(ctx, params.id));
}
