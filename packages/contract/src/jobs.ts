import { z } from 'zod';
import { id } from './common.ts';

/** What can change in how a person gets in, of which they are told. */
export const accountChanges = [
  'password-changed',
  'second-factor-on',
  'second-factor-off',
  'recovery-code-used',
  'api-key-made',
  'webhook-disabled',
] as const;
export type AccountChange = (typeof accountChanges)[number];

/**
 * Every job and what it carries: ids only, never data. The firm's id sets the row-level security context in
 * which the worker does the job.
 */
export const jobs = {
  'report.render': z.object({ firmId: id, reportId: id }),
  'photo.derive': z.object({ firmId: id, photoId: id }),
  'clearance-file.derive': z.object({ firmId: id, fileId: id }),
  'object.collect': z.object({ sha256: z.string() }),
  'mail.invitation': z.object({ linkId: id }),
  'mail.sign-in-link': z.object({ linkId: id }),
  /** Tells a person that how they sign in was changed. */
  'mail.account-change': z.object({ messageId: id, personId: id, change: z.enum(accountChanges) }),
  /** Tells people of an event: those its kind concerns, and those named by whoever recorded it. */
  'event.fan-out': z.object({ firmId: id, eventId: id, personIds: z.array(id).max(500).optional() }),
  /** Sends one message that was gathered from notices. */
  'mail.deliver': z.object({ mailId: id }),
  /** Keeps the accepted text of a quotation as PDF. */
  'quotation.print': z.object({ firmId: id, quotationId: id }),
  /** Sends one message to one endpoint. */
  'webhook.deliver': z.object({ firmId: id, deliveryId: id }),
  /** Makes findings and photos of what a survey is brought in from. */
  'survey.import': z.object({ firmId: id, importId: id }),
  /** Makes the archive of everything a firm has. */
  'firm.export': z.object({ firmId: id, exportId: id }),
  /** Prints one finding for whoever waits for it; handed to its queue directly, so as to lose no time. */
  'finding.preview': z.object({ firmId: id, reportId: id }),
} as const;

export type JobName = keyof typeof jobs;
export type JobData<N extends JobName> = z.infer<(typeof jobs)[N]>;

/** The queue each job waits in, so that long renderings don't hold up thumbnails. */
export const queueOf: Record<
  JobName,
  'reports' | 'previews' | 'images' | 'errands' | 'webhooks' | 'archives'
> = {
  'report.render': 'reports',
  'photo.derive': 'images',
  'clearance-file.derive': 'images',
  'object.collect': 'errands',
  'mail.invitation': 'errands',
  'mail.sign-in-link': 'errands',
  'mail.account-change': 'errands',
  'event.fan-out': 'errands',
  'mail.deliver': 'errands',
  'quotation.print': 'reports',
  'webhook.deliver': 'webhooks',
  'survey.import': 'images',
  'finding.preview': 'previews',
  'firm.export': 'archives',
};
/**
 * How often a job may be tried in all, the waits doubling from two seconds: messages that aren't gathered go on for
 * four hours, as a mail server may be away for as long.
 */
export const attemptsOf = (job: JobName): number =>
  job === 'mail.invitation' || job === 'mail.sign-in-link' || job === 'mail.account-change' ? 14 : 5;

export const queueNames = ['reports', 'previews', 'images', 'errands', 'webhooks', 'archives'] as const;
