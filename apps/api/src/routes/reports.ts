import type { Readable } from 'node:stream';
import { getReport } from '@garboard/core/reports/get-report';
import { getReportData } from '@garboard/core/reports/get-report-data';
import { getReportPdf } from '@garboard/core/reports/get-report-pdf';
import { listReports } from '@garboard/core/reports/list-reports';
import { requestReport } from '@garboard/core/reports/request-report';
import { retryReport } from '@garboard/core/reports/retry-report';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function reportRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'createReport', (ctx, { params, body }) =>
    requestReport(ctx, { surveyId: params.id, kind: body.kind }),
  );
  serve(app, deps, 'listReports', (ctx, { params, query }) =>
    listReports(ctx, { surveyId: params.id, ...query }),
  );
  serve(app, deps, 'getReport', (ctx, { params }) => getReport(ctx, params.id));
  serve(app, deps, 'retryReport', (ctx, { params }) => retryReport(ctx, params.id));
  serve(app, deps, 'getReportData', (ctx, { params }) => getReportData(ctx, params.id));
  serve(app, deps, 'getReportPdf', async (ctx, { params, request, reply }) => {
    const pdf = await getReportPdf(ctx, params.id);
    const etag = `"${pdf.sha256}"`;
    // Kept by the browser, but asked for again each time: who may see the survey can change.
    reply.headers({ etag, 'cache-control': 'private, no-cache' });
    if (request.headers['if-none-match']?.includes(etag)) {
      // Awaiting the reply: it is over before anyone sets another status.
      await reply.code(304).send();
      return undefined;
    }
    reply.headers({
      'content-type': 'application/pdf',
      'content-length': pdf.bytes,
      'content-disposition': inlineDisposition(pdf.fileName),
    });
    const { stream } = await ctx.store.read(pdf.sha256);
    return asAnswer(stream);
  });
}

/** A stream returned from a handler is what Fastify sends; the contract knows no type for bytes. */
const asAnswer = (stream: Readable): undefined => stream as unknown as undefined;

/** RFC 6266: a plain name for old readers, and the true one in UTF-8 (RFC 8187). */
export function inlineDisposition(fileName: string): string {
  // What a file system can't take or a header must not hold; lone halves of surrogate pairs can't be encoded.
  const name = fileName.replace(/[\p{Cc}\p{Cs}]/gu, '').replace(/[/\\:*?"<>|]/g, '-');
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\x20-\x7e]/g, '_')
    .replace(/%/g, '_');
  const encoded = encodeURIComponent(name).replace(
    /['()*]/g,
    (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `inline; filename="${plain}"; filename*=UTF-8''${encoded}`;
}
