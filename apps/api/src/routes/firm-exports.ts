import { archiveSchema } from '@garboard/contract/archive';
import { getExportFile } from '@garboard/core/firm-exports/get-export-file';
import { listExports } from '@garboard/core/firm-exports/list-exports';
import { requestExport } from '@garboard/core/firm-exports/request-export';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveBytes } from '../http/serve-bytes.ts';

export function firmExportRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'createFirmExport', (ctx, { params }) => requestExport(ctx, params.id));
  serve(app, deps, 'listFirmExports', (ctx, { params, query }) =>
    listExports(ctx, { firmId: params.id, ...query }),
  );
  serveBytes(app, deps, 'getFirmExportFile', (ctx, { params }) => getExportFile(ctx, params.id));
  const schema = archiveSchema(deps.env.publicUrl);
  serve(app, deps, 'getFirmArchiveSchema', async () => schema);
}
