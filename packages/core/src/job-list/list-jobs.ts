import type { Job, JobFilter, jobQuery } from '@garboard/contract/job-list';
import { Prisma } from '@garboard/db/database';
import { atMost } from '@garboard/db/reading';
import type { JobStage, JobWait } from '@garboard/trade/job-stages';
import type { Purpose } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import type { ReadCtx } from '../context.ts';
import { cutPage, decodeCursor, type PageInput } from '../paging.ts';
import { jobConditions, jobOrder, jobRows, passed, waits } from './job-rows.ts';
import { asksOnlyForOpen, soonestJobs } from './soonest-jobs.ts';

export interface ListJobs extends JobFilter, PageInput {
  sort: z.output<typeof jobQuery>['sort'];
  total?: 'yes' | 'no';
}

interface Row {
  id: string;
  key: string;
  total: number | null;
  firm_id: string;
  firm_name: string;
  number: string;
  stage: string;
  vessel_id: string;
  vessel_name: string;
  purpose: string;
  requested_by: string;
  surveyor_id: string | null;
  surveyor_name: string | null;
  reviewer_name: string | null;
  next_on: string | null;
  passed: boolean;
  recommends: boolean;
  undecided: number;
  sent: number;
  overdue: number;
  issued_at: Date | null;
  updated_at: Date;
  w_office: boolean;
  w_client: boolean;
  w_surveyor: boolean;
  w_reviewer: boolean;
  w_owner: boolean;
  w_insurer: boolean;
}

/** The jobs of the firms that the actor works for, and how many match in all when that is asked for; nobody else has any. */
export async function listJobs(
  ctx: ReadCtx,
  { limit, cursor, sort, total, ...filter }: ListJobs,
): Promise<{ items: Job[]; next: string | null; total: number | null }> {
  const order = jobOrder[sort];
  const direction = sort === 'newest' ? Prisma.raw('DESC') : Prisma.raw('ASC');
  const cut = decodeCursor(cursor, order.cursor);
  const after = cut === undefined ? null : { key: cut.slice(0, -37), id: cut.slice(-36) };
  const counts = total === 'yes';
  const soonest = sort === 'due' && !counts && asksOnlyForOpen(filter);
  const found = soonest ? soonestJobs(ctx, after, limit + 1) : matching(ctx, filter, sort);
  const step = sort === 'newest' ? Prisma.raw('<') : Prisma.raw('>');
  const from = after
    ? Prisma.sql`WHERE (key, id) ${step} (${after.key}::${order.type}, ${after.id}::uuid)`
    : Prisma.empty;
  const rows = await ctx.tx.$queryRaw<Row[]>`
    WITH found AS MATERIALIZED (${found}),
    page AS (SELECT * FROM found ${from} ORDER BY key ${direction}, id ${direction} ${atMost(limit + 1)}),
    j AS (
      SELECT page.*, s.clearance_decided_by AS decider, s.held,
             (${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date AS today
        FROM page JOIN surveys s ON s.id = page.id)
    SELECT j.id, j.key::text AS key, ${counts ? Prisma.sql`(SELECT count(*) FROM found)::int` : Prisma.sql`NULL::int`} AS total,
           s.firm_id, firms.name AS firm_name, s.number, j.stage, s.vessel_id, v.name AS vessel_name, s.purpose,
           s.requested_by, s.surveyor_id, people.name AS surveyor_name, r.reviewer_name, j.next_on::text AS next_on,
           coalesce(${passed}, false) AS passed, j.recommends, j.undecided, j.sent,
           (SELECT count(*) FROM findings f WHERE f.survey_id = j.id AND j.stage = 'in-clearance' AND f.clearing
               AND f.state IN ('open', 'evidence-sent', 'returned') AND f.due_on < j.today)::int AS overdue,
           s.issued_at, s.updated_at, ${waits.office} AS w_office, ${waits.client} AS w_client, ${waits.surveyor} AS w_surveyor,
           ${waits.reviewer} AS w_reviewer, ${waits.owner} AS w_owner, ${waits.insurer} AS w_insurer
      FROM j
      JOIN surveys s ON s.id = j.id
      JOIN vessels v ON v.id = s.vessel_id
      JOIN firms ON firms.id = s.firm_id
      LEFT JOIN people ON people.id = s.surveyor_id
      LEFT JOIN reviews r ON r.survey_id = s.id AND r.state = 'asked' AND j.stage = 'in-review'
     ORDER BY j.key ${direction}, j.id ${direction}`;
  const page = cutPage(rows, limit, (row) => `${row.key}_${row.id}`);
  const none = counts ? 0 : null;
  return { items: page.items.map(present), next: page.next, total: rows[0]?.total ?? none };
}

/** Every job that matches, with what it is put in order by. */
function matching(ctx: ReadCtx, filter: JobFilter, sort: ListJobs['sort']): Prisma.Sql {
  const named = sort === 'vessel' || filter.q;
  return Prisma.sql`
    SELECT j.id, ${jobOrder[sort].key} AS key, j.next_on, j.recommends, j.stage, j.undecided, j.sent
      FROM (${jobRows(ctx)}) AS j ${named ? Prisma.sql`JOIN vessels v ON v.id = j.vessel_id` : Prisma.empty}
      ${jobConditions(ctx, filter)}`;
}

function present(row: Row): Job {
  return {
    id: row.id,
    firmId: row.firm_id,
    firmName: row.firm_name,
    number: row.number,
    stage: row.stage as JobStage,
    vesselId: row.vessel_id,
    vesselName: row.vessel_name,
    purpose: row.purpose as Purpose,
    requestedBy: row.requested_by,
    surveyorId: row.surveyor_id,
    surveyorName: row.surveyor_name,
    next: row.next_on
      ? {
          what: row.recommends ? 'recommendation' : 'attendance',
          on: row.next_on,
          passed: row.passed,
        }
      : null,
    waiting: waitingOf(row),
    undecided: row.undecided,
    overdue: row.overdue,
    issuedAt: row.issued_at?.toISOString() ?? null,
    updatedAt: row.updated_at.toISOString(),
  };
}

function waitingOf(row: Row): Job['waiting'] {
  const inClearance = row.stage === 'in-clearance';
  const who = (key: JobWait, name: string | null, count: number | null) => ({ for: key, name, count });
  return [
    ...(row.w_office ? [who('office', null, null)] : []),
    ...(row.w_client ? [who('client', null, null)] : []),
    ...(row.w_surveyor ? [who('surveyor', row.surveyor_name, inClearance ? row.sent : null)] : []),
    ...(row.w_reviewer ? [who('reviewer', row.reviewer_name, null)] : []),
    ...(row.w_owner ? [who('owner', null, row.undecided - row.sent)] : []),
    ...(row.w_insurer ? [who('insurer', null, row.sent)] : []),
  ];
}
