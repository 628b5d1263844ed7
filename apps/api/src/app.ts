import { randomUUID } from 'node:crypto';
import cookie from '@fastify/cookie';
import multipart from '@fastify/multipart';
import { uploadLimits } from '@garboard/contract/limits';
import { type RouteName, routes } from '@garboard/contract/routes';
import Fastify, { type FastifyBaseLogger, type FastifyInstance, LogController } from 'fastify';
import { validatorCompiler } from 'fastify-type-provider-zod';
import { installClosing } from './http/closing.ts';
import { compressAnswers } from './http/compress.ts';
import type { Deps } from './http/deps.ts';
import { logRequests } from './http/log-requests.ts';
import { measureRequests } from './http/measure.ts';
import { installPace } from './http/pace.ts';
import { installProblemHandlers } from './http/problems.ts';
import { installProtection, refuseAddress, refuseConnection, serverLimits } from './http/protect.ts';
import { serialiserCompiler } from './http/serialise.ts';
import { installSessions } from './http/session.ts';
import { traceRequests } from './http/trace.ts';
import { accountRoutes } from './routes/account.ts';
import { catalogueRoutes } from './routes/catalogue.ts';
import { clearanceRoutes } from './routes/clearances.ts';
import { coverageRoutes } from './routes/coverage.ts';
import { docsRoutes } from './routes/docs.ts';
import { engagementRoutes } from './routes/engagement.ts';
import { findingRoutes } from './routes/findings.ts';
import { firmExportRoutes } from './routes/firm-exports.ts';
import { healthRoutes } from './routes/health.ts';
import { importRoutes } from './routes/imports.ts';
import { invoiceRoutes } from './routes/invoices.ts';
import { listRoutes } from './routes/lists.ts';
import { noticeRoutes } from './routes/notices.ts';
import { peopleRoutes } from './routes/people.ts';
import { photoRoutes } from './routes/photos.ts';
import { portalRoutes } from './routes/portal.ts';
import { reportRoutes } from './routes/reports.ts';
import { reviewRoutes } from './routes/reviews.ts';
import { shareLinkRoutes } from './routes/share-links.ts';
import { surveyRoutes } from './routes/surveys.ts';
import { uploadRoutes } from './routes/uploads.ts';
import { verificationRoutes } from './routes/verification.ts';
import { vesselRoutes } from './routes/vessels.ts';
import { webhookRoutes } from './routes/webhooks.ts';
import { worksheetRoutes } from './routes/worksheets.ts';

/** Builds the whole HTTP surface without listening. @throws when a route of the contract has no handler. */
export async function buildApp(deps: Deps): Promise<FastifyInstance> {
  const logger: FastifyBaseLogger = deps.log;
  const app: FastifyInstance = Fastify({
    loggerInstance: logger,
    // Written down once, as it ends: see logRequests.
    logController: new LogController({ disableRequestLogging: true }),
    genReqId: () => randomUUID(),
    ...serverLimits,
    trustProxy: deps.env.trustedProxies ?? 'loopback',
    clientErrorHandler: refuseConnection(deps),
    frameworkErrors: refuseAddress(deps),
  });
  // The interface takes JSON and forms only.
  app.removeContentTypeParser('text/plain');
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serialiserCompiler(deps.checkAnswers ?? false));
  app.decorate('served', { names: new Set<RouteName>() });
  installProblemHandlers(app);
  logRequests(app);
  measureRequests(app, deps);
  installPace(app);
  installClosing(app);
  traceRequests(app);

  installProtection(app, deps);
  compressAnswers(app);
  await app.register(cookie);
  await app.register(multipart, {
    limits: {
      files: uploadLimits.filesPerRequest,
      fields: 20,
      parts: uploadLimits.filesPerRequest + 20,
      fieldSize: 100_000,
    },
  });
  installSessions(app, deps);

  healthRoutes(app, deps);
  accountRoutes(app, deps);
  peopleRoutes(app, deps);
  firmExportRoutes(app, deps);
  vesselRoutes(app, deps);
  surveyRoutes(app, deps);
  photoRoutes(app, deps);
  uploadRoutes(app, deps);
  findingRoutes(app, deps);
  importRoutes(app, deps);
  listRoutes(app, deps);
  worksheetRoutes(app, deps);
  catalogueRoutes(app, deps);
  coverageRoutes(app, deps);
  reportRoutes(app, deps);
  reviewRoutes(app, deps);
  noticeRoutes(app, deps);
  shareLinkRoutes(app, deps);
  engagementRoutes(app, deps);
  invoiceRoutes(app, deps);
  webhookRoutes(app, deps);
  verificationRoutes(app, deps);
  clearanceRoutes(app, deps);
  await docsRoutes(app, deps);
  await portalRoutes(app, deps);

  const missing = (Object.keys(routes) as RouteName[]).filter((name) => !app.served.names.has(name));
  if (missing.length > 0)
    throw new Error(`These routes of the contract have no handler: ${missing.join(', ')}`);
  return app;
}
