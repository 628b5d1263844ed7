import { reportDataSchema } from '@garboard/contract/report-data';
import { getReportCsv } from '@garboard/core/reports/get-report-csv';
import { verifyDocument } from '@garboard/core/reports/verify-document';
import { deleteSigningKey } from '@garboard/core/signing/delete-signing-key';
import { getSigningKey } from '@garboard/core/signing/get-signing-key';
import { putSigningKey } from '@garboard/core/signing/put-signing-key';
import { openSealer } from '@garboard/platform/sealing';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveText } from '../http/serve-text.ts';

/** Questions a minute from one address: far more than a reader asks, far fewer than would find a code. */
const questionsPerMinute = 60;

export function verificationRoutes(app: FastifyInstance, deps: Deps): void {
  app.register(async (open) => {
    const limited = open.rateLimit({
      max: questionsPerMinute,
      timeWindow: 60_000,
      errorResponseBuilder: () =>
        Object.assign(new Error('Too many documents were looked up from here. Try again in a minute.'), {
          statusCode: 429,
        }),
    });
    open.addHook('onRequest', limited);
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
