import { reportDataSchema } from '@garboard/contract/report-data';
import { getReportCsv } from '@garboard/core/reports/get-report-csv';
import { verifyDocument } from '@garboard/core/reports/verify-document';
import { deleteSigningKey } from '@garboard/core/signing/delete-signing-key';
import { getSigningKey } from '@garboard/core/signing/get-signing-key';
import { putSigningKey } from '@garboard/core/signing/put-signing-key';
import { openSealer } from '@garboard/platform/sealing';
import type { FastifyInstance } from 'fastify';
import { installLookUpLimit } from '../http/attempt-limits.ts';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveText } from '../http/serve-text.ts';

export function verificationRoutes(app: FastifyInstance, deps: Deps): void {
  app.register(async (open) => {
    installLookUpLimit(open, deps);
    serve(open, deps, 'verifyCode', (ctx, { params }) => verifyDocument(ctx, { code: params.code }));
    serve(open, deps, 'verifyFile', (ctx, { body }) => verifyDocument(ctx, { sha256: body.sha256 }));
  });
  const schema = reportDataSchema(deps.env.publicUrl);
  serve(app, deps, 'getReportDataSchema', async () => schema);
  serveText(app, deps, 'getReportCsv', async (ctx, { id }) => ({
    ...(await getReportCsv(ctx, id)),
    mediaType: 'text/csv; charset=utf-8; header=present',
  }));

  serve(app, deps, 'getSigningKey', (ctx, { params }) => getSigningKey(ctx, params.id));
  serve(app, deps, 'putSigningKey', async (ctx, { params, body }) =>
    putSigningKey(ctx, { firmId: params.id, upload: body, sealer: await openSealer(deps.env) }),
  );
  serve(app, deps, 'deleteSigningKey', (ctx, { params }) => deleteSigningKey(ctx, params.id));
}
