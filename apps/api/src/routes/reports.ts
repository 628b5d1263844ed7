import { getReport } from '@garboard/core/reports/get-report';
import { getReportData } from '@garboard/core/reports/get-report-data';
import { getReportPdf } from '@garboard/core/reports/get-report-pdf';
import { getReportPhotoImage } from '@garboard/core/reports/get-report-photo-image';
import { getSurveyChanges } from '@garboard/core/reports/get-survey-changes';
import { listReports } from '@garboard/core/reports/list-reports';
import { requestReport } from '@garboard/core/reports/request-report';
import { retryReport } from '@garboard/core/reports/retry-report';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveBytes } from '../http/serve-bytes.ts';

export function reportRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'createReport', (ctx, { params, body }) =>
    requestReport(ctx, { surveyId: params.id, ...body, publicUrl: deps.env.publicUrl }),
  );
  serve(app, deps, 'listReports', (ctx, { params, query }) =>
    listReports(ctx, { surveyId: params.id, ...query, preview: query.preview === 'true' }),
  );
  serve(app, deps, 'getSurveyChanges', (ctx, { params }) => getSurveyChanges(ctx, params.id));
  serve(app, deps, 'getReport', (ctx, { params }) => getReport(ctx, params.id));
  serve(app, deps, 'retryReport', (ctx, { params }) => retryReport(ctx, params.id));
  serve(app, deps, 'getReportData', (ctx, { params }) => getReportData(ctx, params.id));
  serveBytes(app, deps, 'getReportPdf', (ctx, { params }) => getReportPdf(ctx, params.id));
  serveBytes(app, deps, 'getReportPhotoImage', (ctx, { params, query }) =>
    getReportPhotoImage(ctx, { reportId: params.id, photoId: params.photoId, query }),
  );
}
