import type { recommendation, recommendationQuery } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import { decidedFindingStates } from '@garboard/trade/states';
import type { FindingState, System, Urgency } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, staffFirmIds } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';

type RecommendationView = z.output<typeof recommendation>;

interface Row {
  id: string;
  number: number;
  title: string;
  system: string;
  urgency: string;
  state: string;
  due: string;
  overdue: boolean;
  decided_by: string;
  survey_id: string;
  survey_number: string;
  vessel_name: string;
  firm_name: string;
}

/** Findings without a due date come after all that have one. */
const noDate = '9999-12-31';
const cursorForm = /^\d{4}-\d\d-\d\d_[0-9a-f-]{36}$/;

function waitingFor(row: Row): RecommendationView['waitingFor'] {
  if (row.state === 'open' || row.state === 'returned') return 'owner';
  if (row.state === 'evidence-sent') return row.decided_by === 'surveyor' ? 'surveyor' : 'insurer';
  return null;
}

/**
 * Findings that require clearing, over every survey of the actor's firms or released to the actor, soonest due
 * first. Words are those that were issued. Keyset by (due day, id), compared as a row.
 */
export async function listRecommendations(
  ctx: Ctx,
  query: z.output<typeof recommendationQuery>,
): Promise<Page<RecommendationView>> {
  const after = decodeCursor(query.cursor, cursorForm)?.split('_');
  const like = query.q ? `%${query.q.replace(/[\\%_]/g, '\\$&')}%` : null;
  const conditions = [
    Prisma.sql`f.clearing AND f.state <> 'draft'`,
    Prisma.sql`(f.firm_id = ANY (${staffFirmIds(ctx.actor)}::uuid[]) OR f.survey_id IN (
      SELECT p.survey_id FROM parties p WHERE p.person_id = ${actorId(ctx.actor)}::uuid AND p.released))`,
    ...(query.state ? [Prisma.sql`f.state = ${query.state}`] : []),
    ...(query.dueBefore ? [Prisma.sql`f.due_on < ${query.dueBefore}::date`] : []),
    ...(like
      ? [Prisma.sql`(f.issued->>'title' ILIKE ${like} OR v.name ILIKE ${like} OR s.number ILIKE ${like})`]
      : []),
    ...(after
      ? [Prisma.sql`(coalesce(f.due_on, ${noDate}::date), f.id) > (${after[0]}::date, ${after[1]}::uuid)`]
      : []),
  ];
  const rows = await ctx.tx.$queryRaw<Row[]>`
    SELECT f.id, f.number, coalesce(f.issued->>'title', f.title) AS title,
           coalesce(f.issued->>'system', f.system) AS system, coalesce(f.issued->>'urgency', f.urgency) AS urgency,
           f.state, coalesce(f.due_on, ${noDate}::date)::text AS due,
           coalesce(f.state <> ALL (${[...decidedFindingStates]})
             AND f.due_on < (${ctx.clock()}::timestamptz AT TIME ZONE s.time_zone)::date, false) AS overdue,
           s.clearance_decided_by AS decided_by, s.id AS survey_id, s.number AS survey_number,
           v.name AS vessel_name, firms.name AS firm_name
      FROM findings f
      JOIN surveys s ON s.id = f.survey_id
      JOIN vessels v ON v.id = s.vessel_id
      JOIN firms ON firms.id = s.firm_id
     WHERE ${Prisma.join(conditions, ' AND ')}
     ORDER BY coalesce(f.due_on, ${noDate}::date), f.id
     LIMIT ${query.limit + 1}`;
  const page = cutPage(rows, query.limit, (row) => `${row.due}_${row.id}`);
  const items = page.items.map((row) => ({
    id: row.id,
    number: row.number,
    title: row.title,
    system: row.system as System,
    urgency: row.urgency as Urgency,
    state: row.state as FindingState,
    dueOn: row.due === noDate ? null : row.due,
    overdue: row.overdue,
    waitingFor: waitingFor(row),
    surveyId: row.survey_id,
    surveyNumber: row.survey_number,
    vesselName: row.vessel_name,
    firmName: row.firm_name,
  }));
  return { items, next: page.next };
}
