import type { jobCounts } from '@garboard/contract/job-list';
import { type JobStage, jobStages } from '@garboard/trade/job-stages';
import type { z } from 'zod';
import type { ReadCtx } from '../context.ts';
import { isClosed, jobRows, passed, soon, waitsForMe } from './job-rows.ts';

type Counts = z.input<typeof jobCounts>;

interface Row extends Omit<Counts, 'stages'> {
  stages: Partial<Record<JobStage, number>> | null;
}

/** How many of the firm's jobs stand at each stage, and what of the open ones is due or waits for the actor. */
export async function countJobs(ctx: ReadCtx): Promise<Counts> {
  const rows = await ctx.tx.$queryRaw<Row[]>`
    WITH job AS MATERIALIZED (
      SELECT j.stage, j.surveyor_id, NOT ${isClosed} AND ${passed} AS passed, NOT ${isClosed} AND ${soon} AS soon,
             ${waitsForMe(ctx)} AS mine
        FROM (${jobRows(ctx)}) AS j)
    SELECT (SELECT json_object_agg(stage, n) FROM (SELECT stage, count(*) AS n FROM job GROUP BY stage) AS s) AS stages,
           count(*) FILTER (WHERE passed)::int AS overdue,
           count(*) FILTER (WHERE soon)::int AS "dueThisWeek",
           count(*) FILTER (WHERE mine)::int AS "waitingForMe",
           (SELECT coalesce(json_agg(json_build_object('id', id, 'name', name) ORDER BY name), '[]')
              FROM people WHERE id IN (SELECT surveyor_id FROM job)) AS surveyors
      FROM job`;
  const row = rows[0];
  if (!row) throw new Error('Counting answered no row.');
  const stages = Object.fromEntries(jobStages.map((stage) => [stage, row.stages?.[stage] ?? 0]));
  return { ...row, stages: stages as Counts['stages'] };
}
