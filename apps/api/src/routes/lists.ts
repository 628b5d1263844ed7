import type { Job } from '@garboard/contract/job-list';
import type { Recommendation } from '@garboard/contract/recommendations';
import { countJobs } from '@garboard/core/job-list/count-jobs';
import { listJobs } from '@garboard/core/job-list/list-jobs';
import { countRecommendations } from '@garboard/core/recommendations/count-recommendations';
import { decideRecommendations } from '@garboard/core/recommendations/decide-recommendations';
import { listCoveredVessels } from '@garboard/core/recommendations/list-covered-vessels';
import { listRecommendations } from '@garboard/core/recommendations/list-recommendations';
import { createSavedView } from '@garboard/core/saved-views/create-saved-view';
import { deleteSavedView } from '@garboard/core/saved-views/delete-saved-view';
import { listSavedViews } from '@garboard/core/saved-views/list-saved-views';
import { updateSavedView } from '@garboard/core/saved-views/update-saved-view';
import { jobStageLabels, jobWaitLabels } from '@garboard/trade/job-stages';
import {
  findingStateLabels,
  firmRoleLabels,
  partyRoleLabels,
  purposeLabels,
  systemLabels,
  urgencyLabels,
} from '@garboard/trade/vocabulary';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve, serveReading } from '../http/serve.ts';
import { type CsvList, serveCsv } from '../http/serve-csv.ts';

/** So many items of a list are read at once for a file. */
const atOnce = 5000;

const clearerLabels = {
  owner: partyRoleLabels.owner,
  insurer: partyRoleLabels.insurer,
  surveyor: firmRoleLabels.surveyor,
};

const recommendationColumns: CsvList<never, Recommendation>['columns'] = {
  Vessel: (r) => r.vesselName,
  'Survey firm': (r) => r.firmName,
  'Survey number': (r) => r.surveyNumber,
  Finding: (r) => r.number,
  Recommendation: (r) => r.title,
  System: (r) => systemLabels[r.system],
  Urgency: (r) => urgencyLabels[r.urgency],
  'Due on': (r) => r.dueOn,
  Overdue: (r) => (r.overdue ? 'Yes' : 'No'),
  State: (r) => findingStateLabels[r.state],
  'Waiting for': (r) => (r.waitingFor ? clearerLabels[r.waitingFor] : null),
  'Evidence sent at (UTC)': (r) => r.evidence?.sentAt ?? null,
  'Evidence sent by': (r) => r.evidence?.sentBy ?? null,
};

const jobColumns: CsvList<never, Job>['columns'] = {
  Vessel: (job) => job.vesselName,
  'Survey number': (job) => job.number,
  Stage: (job) => jobStageLabels[job.stage],
  Purpose: (job) => purposeLabels[job.purpose],
  'Asked for by': (job) => job.requestedBy,
  Surveyor: (job) => job.surveyorName,
  'Next day': (job) => job.next?.on ?? null,
  'What that day is': (job) =>
    job.next ? (job.next.what === 'attendance' ? 'Attendance' : 'Recommendation due') : null,
  'Waiting for': (job) => job.waiting.map((wait) => wait.name ?? jobWaitLabels[wait.for]).join(', '),
  'Recommendations still to clear': (job) => job.undecided,
  'Of these overdue': (job) => job.overdue,
  'Issued at (UTC)': (job) => job.issuedAt,
};

/** Lists over many surveys, and each person's views of them. */
export function listRoutes(app: FastifyInstance, deps: Deps): void {
  serveReading(app, deps, 'listRecommendations', (ctx, { query }) => listRecommendations(ctx, query));
  serveReading(app, deps, 'countRecommendations', (ctx) => countRecommendations(ctx));
  serve(app, deps, 'decideRecommendations', (ctx, { body }) => decideRecommendations(ctx, body));
  serveReading(app, deps, 'listCoveredVessels', (ctx, { query }) => listCoveredVessels(ctx, query));
  serveCsv(app, deps, 'exportRecommendations', {
    name: 'recommendations',
    columns: recommendationColumns,
    page: (ctx, query, cursor) => listRecommendations(ctx, { ...query, sort: 'due', limit: atOnce, cursor }),
  });

  serveReading(app, deps, 'listJobs', (ctx, { query }) => listJobs(ctx, query));
  serveReading(app, deps, 'countJobs', (ctx) => countJobs(ctx));
  serveCsv(app, deps, 'exportJobs', {
    name: 'jobs',
    columns: jobColumns,
    page: (ctx, query, cursor) => listJobs(ctx, { ...query, sort: 'due', limit: atOnce, cursor }),
  });

  serve(app, deps, 'listSavedViews', (ctx, { query }) => listSavedViews(ctx, query));
  serve(app, deps, 'createSavedView', (ctx, { body }) => createSavedView(ctx, body));
  serve(app, deps, 'updateSavedView', (ctx, { params, body }) =>
    updateSavedView(ctx, { id: params.id, patch: body }),
  );
  serve(app, deps, 'deleteSavedView', (ctx, { params }) => deleteSavedView(ctx, params.id));
}
