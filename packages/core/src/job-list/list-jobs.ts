import type { Job, JobFilter, jobQuery } from '@garboard/contract/job-list';
import { Prisma } from '@garboard/db/database';
import type { JobStage, JobWait } from '@garboard/trade/job-stages';
import type { Purpose } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type PageInput } from '../paging.ts';
import { jobConditions, jobOrder, jobRows } from './job-rows.ts';

export interface ListJobs extends JobFilter, PageInput {
  sort: z.output<typeof jobQuery>['sort'];
}

interface Row {
  id: string;
  key: string;
  total: number;
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
  passed: boolean | null;
  recommends: boolean;
  undecided: number;
  sent: number;
  overdue: number;
  issued_at: Date | null;
  updated_at: Date;
  w_office: boolean;
  w_surveyor: boolean;
  w_reviewer: boolean;
  w_owner: boolean;
  w_insurer: boolean;
}

/** The jobs of the firms that the actor works for, with how many match in all; nobody else has any. */
export async function listJobs(
  ctx: Ctx,
  query: ListJobs,
): Promise<{ items: Job[]; next: string | null; total: number }> {
  const order = jobOrder[query.sort];
  const [step, direction] =
    query.sort === 'newest' ? [Prisma.raw('<'), Prisma.raw('DESC')] : [Prisma.raw('>'), Prisma.raw('ASC')];
  const after = decodeCursor(query.cursor, order.cursor);
  const from = after
    ? Prisma.sql`WHERE (key, id) ${step} (${after.slice(0, -37)}::${order.type}, ${after.slice(-36)}::uuid)`
    : Prisma.empty;
  const named = query.sort === 'vessel' || query.q;
  const rows = await ctx.tx.$queryRaw<Row[]>`
    WITH found AS MATERIALIZED (
      SELECT j.*, ${order.key} AS key
        FROM (${jobRows(ctx)}) AS j ${named ? Prisma.sql`JOIN vessels v ON v.id = j.vessel_id` : Prisma.empty}
        ${jobConditions(query)}),
    page AS (SELECT * FROM found ${from} ORDER BY key ${direction}, id ${direction} LIMIT ${query.limit + 1})
    SELECT page.id, page.key::text AS key, (SELECT count(*) FROM found)::int AS total, page.firm_id,
           firms.name AS firm_name, page.number, page.stage, page.vessel_id, v.name AS vessel_name, page.purpose,
           page.requested_by, page.surveyor_id, people.name AS surveyor_name, page.reviewer_name,
           page.next_on::text AS next_on, page.passed, page.recommends, page.undecided, page.sent, page.overdue,
           page.issued_at, page.updated_at, w_office, w_surveyor, w_reviewer, w_owner, w_insurer
      FROM page
      JOIN vessels v ON v.id = page.vessel_id
      JOIN firms ON firms.id = page.firm_id
      LEFT JOIN people ON people.id = page.surveyor_id
     ORDER BY page.key ${direction}, page.id ${direction}`;
  const page = cutPage(rows, query.limit, (row) => `${row.key}_${row.id}`);
  return { items: page.items.map(present), next: page.next, total: rows[0]?.total ?? 0 };
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
          passed: row.passed ?? false,
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
    ...(row.w_surveyor ? [who('surveyor', row.surveyor_name, inClearance ? row.sent : null)] : []),
    ...(row.w_reviewer ? [who('reviewer', row.reviewer_name, null)] : []),
    ...(row.w_owner ? [who('owner', null, row.undecided - row.sent)] : []),
    ...(row.w_insurer ? [who('insurer', null, row.sent)] : []),
  ];
}
