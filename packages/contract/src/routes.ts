import { accountRoutes } from './routes/account.ts';
import { catalogueRoutes } from './routes/catalogue.ts';
import { clearanceRoutes } from './routes/clearance.ts';
import { coverageRoutes } from './routes/coverage.ts';
import { engagementRoutes } from './routes/engagement.ts';
import { findingsRoutes } from './routes/findings.ts';
import { firmExportRoutes } from './routes/firm-exports.ts';
import { importRoutes } from './routes/imports.ts';
import { invoiceRoutes } from './routes/invoices.ts';
import { listsRoutes } from './routes/lists.ts';
import { noticesRoutes } from './routes/notices.ts';
import { ownDataRoutes } from './routes/own-data.ts';
import { peopleRoutes } from './routes/people.ts';
import { photosRoutes } from './routes/photos.ts';
import { reportsRoutes } from './routes/reports.ts';
import { reviewRoutes } from './routes/review.ts';
import type { Route } from './routes/route.ts';
import { shareLinkRoutes } from './routes/share-links.ts';
import { surveysRoutes } from './routes/surveys.ts';
import { verificationRoutes } from './routes/verification.ts';
import { webhookRoutes } from './routes/webhooks.ts';
import { worksheetsRoutes } from './routes/worksheets.ts';

export type { Route } from './routes/route.ts';

/** Every operation of the REST interface, by name. */
export const routes = {
  ...accountRoutes,
  ...peopleRoutes,
  ...firmExportRoutes,
  ...surveysRoutes,
  ...findingsRoutes,
  ...photosRoutes,
  ...importRoutes,
  ...listsRoutes,
  ...catalogueRoutes,
  ...worksheetsRoutes,
  ...coverageRoutes,
  ...reportsRoutes,
  ...clearanceRoutes,
  ...reviewRoutes,
  ...noticesRoutes,
  ...shareLinkRoutes,
  ...engagementRoutes,
  ...invoiceRoutes,
  ...ownDataRoutes,
  ...webhookRoutes,
  ...verificationRoutes,
} satisfies Record<string, Route>;

export type Routes = typeof routes;
export type RouteName = keyof Routes;
