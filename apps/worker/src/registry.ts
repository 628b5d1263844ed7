import { type JobData, type JobName, jobs } from '@garboard/contract/jobs';
import { markDone, traceparentOf } from '@garboard/core/outbox/dispatch';
import { inTransaction } from '@garboard/db/database';
import { NoRetryError, type ReceivedJob } from '@garboard/platform/queue';
import { tracingOn, withJobSpan } from '@garboard/platform/tracing';
import type { Attempt, JobDeps } from './job-deps.ts';
import { collectObjectJob } from './jobs/collect-object.ts';
import { deliverMailJob } from './jobs/deliver-mail.ts';
import { deliverWebhookJob } from './jobs/deliver-webhook.ts';
import { deriveClearanceFileJob } from './jobs/derive-clearance-file.ts';
import { derivePhotoJob } from './jobs/derive-photo.ts';
import { exportFirmJob } from './jobs/export-firm.ts';
import { fanOutEventJob } from './jobs/fan-out-event.ts';
import { importSurveyJob } from './jobs/import-survey.ts';
import { mailAccountChangeJob } from './jobs/mail-account-change.ts';
import { mailInvitationJob, mailSignInLinkJob } from './jobs/mail-link.ts';
import { printQuotationJob } from './jobs/print-quotation.ts';
import { renderReportJob } from './jobs/render-report.ts';

type Handlers = {
  [N in JobName]: (deps: JobDeps, data: JobData<N>, attempt: Attempt) => Promise<void>;
};

/** Who does which job. A job of the contract without a handler here is a type error. */
const handlers: Handlers = {
  'report.render': renderReportJob,
  'survey.import': importSurveyJob,
  'finding.preview': renderReportJob,
  'quotation.print': printQuotationJob,
  'photo.derive': derivePhotoJob,
  'webhook.deliver': deliverWebhookJob,
  'clearance-file.derive': deriveClearanceFileJob,
  'object.collect': collectObjectJob,
  'mail.invitation': mailInvitationJob,
  'mail.sign-in-link': mailSignInLinkJob,
  'mail.account-change': mailAccountChangeJob,
  'event.fan-out': fanOutEventJob,
  'mail.deliver': deliverMailJob,
  'firm.export': exportFirmJob,
};

const isJobName = (name: string): name is JobName => Object.hasOwn(handlers, name);

async function run<N extends JobName>(deps: JobDeps, name: N, raw: unknown, attempt: Attempt): Promise<void> {
  const parsed = jobs[name].safeParse(raw);
  if (!parsed.success) throw new NoRetryError(`The data of this ${name} job is not what its contract says.`);
  await handlers[name](deps, parsed.data as JobData<N>, attempt);
}

/** Does the work in the trace of whoever asked for it; looks that up only when traces are made. */
async function traced(deps: JobDeps, { id, name, attempt }: ReceivedJob<unknown>, work: () => Promise<void>) {
  if (!tracingOn()) return work();
  const traceparent = await inTransaction(deps.db, [], (tx) => traceparentOf(tx, id)).catch(() => null);
  const facts = { 'garboard.job': name, 'garboard.job_id': id, 'garboard.attempt': attempt };
  return withJobSpan(traceparent, { name: `job ${name}`, facts }, work);
}

/** Notes that a job need not be done again. Should that fail, the queue itself is asked later; see lost-jobs.ts. */
async function noteDone({ db, clock, log }: JobDeps, jobId: string): Promise<void> {
  await inTransaction(db, [], (tx) => markDone(tx, [jobId], clock())).catch((error: unknown) =>
    log.warn({ err: error, jobId }, 'not noted as done, asked about later'),
  );
}

/** Does a job. @throws Error when it failed and may be tried again; NoRetryError when that is no use. */
export async function doJob(deps: JobDeps, job: ReceivedJob<unknown>): Promise<void> {
  if (!isJobName(job.name)) throw new NoRetryError(`This version of the worker knows no job ${job.name}.`);
  const log = deps.log.child({ job: job.name, jobId: job.id, attempt: job.attempt });
  const started = performance.now();
  const attempt = { lastAttempt: job.lastAttempt };
  const { name } = job;
  try {
    await traced(deps, job, () => run({ ...deps, log }, name, job.data, attempt));
    const ms = performance.now() - started;
    deps.measureJob?.(job.name, 'done', ms);
    log.info({ ms: Math.round(ms) }, 'job done');
    await noteDone(deps, job.id);
  } catch (error) {
    deps.measureJob?.(job.name, 'failed', performance.now() - started);
    log[job.lastAttempt ? 'error' : 'warn']({ err: error }, 'job failed');
    if (job.lastAttempt || error instanceof NoRetryError) await noteDone(deps, job.id);
    throw error;
  }
}
