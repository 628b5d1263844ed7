import { jobStages, jobWaits } from '@garboard/trade/job-stages';
import { purposes } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { day, id, instant, pageQuery, totalAsked, wantsTotal } from './common.ts';

const stages = z.enum(jobStages);
const filters = {
  stage: stages.optional(),
  closed: z.enum(['yes', 'no']).optional().meta({
    description: 'yes: only closed and cancelled ones; no: only the others',
  }),
  due: z.enum(['overdue', 'this-week']).optional().meta({
    description: 'Jobs whose next day has passed, or is today or within the next 7 days',
  }),
  waitingFor: z.enum([...jobWaits, 'me']).optional(),
  surveyorId: id.optional(),
  purpose: z.enum(purposes).optional(),
  firmId: id.optional(),
  q: z.string().max(100).optional().meta({
    description: 'Part of the number, the vessel’s name or who asked for the survey',
  }),
};
export const jobFilter = z.object(filters);
export type JobFilter = z.output<typeof jobFilter>;

export const jobQuery = pageQuery.extend({
  ...filters,
  total: wantsTotal,
  sort: z.enum(['due', 'newest', 'vessel', 'stage']).default('due'),
});

/** A survey as the firm's list of jobs shows it: where it stands, what comes next and who waits for whom. */
export const job = z
  .object({
    id,
    firmId: id,
    firmName: z.string(),
    number: z.string(),
    stage: stages,
    vesselId: id,
    vesselName: z.string(),
    purpose: z.enum(purposes),
    requestedBy: z.string(),
    surveyorId: id.nullable(),
    surveyorName: z.string().nullable(),
    next: z
      .object({ what: z.enum(['attendance', 'recommendation']), on: day, passed: z.boolean() })
      .nullable()
      .meta({ description: 'The next day that counts, or one that has passed with something still to do' }),
    waiting: z
      .array(
        z.object({
          for: z.enum(jobWaits),
          name: z.string().nullable(),
          count: z.int().nullable().meta({ description: 'How many recommendations wait' }),
        }),
      )
      .meta({ description: 'Who has to do the next thing; empty when nobody has' }),
    undecided: z.int(),
    overdue: z.int(),
    issuedAt: instant.nullable(),
    updatedAt: instant,
  })
  .meta({ id: 'Job' });
export type Job = z.output<typeof job>;

export const jobPage = z.object({ items: z.array(job), next: z.string().nullable(), total: totalAsked });

export const jobCounts = z
  .object({
    stages: z.record(stages, z.int()),
    overdue: z.int(),
    dueThisWeek: z.int(),
    waitingForMe: z.int(),
    surveyors: z.array(z.object({ id, name: z.string() })).meta({ description: 'Who signs any of them' }),
  })
  .meta({ id: 'JobCounts' });
