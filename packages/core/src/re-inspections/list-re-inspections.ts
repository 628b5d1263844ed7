import type { ReInspection } from '@garboard/contract/re-inspections';
import type { Prisma } from '@garboard/db/database';
import type { Outcome } from '@garboard/trade/re-inspection';
import type { AttendanceCondition, FindingState } from '@garboard/trade/vocabulary';
import { authorise, isStaff, may } from '../access/policy.ts';
import { visibleFindings } from '../access/scopes.ts';
import { dayOf } from '../clearance/extension-rows.ts';
import { evidenceIsFor } from '../clearance/load-clearance.ts';
import type { Ctx } from '../context.ts';
import { issuedTitle } from '../findings/load-finding.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';

const withItems = (ctx: Ctx) =>
  ({
    items: {
      where: { finding: visibleFindings(ctx.actor) },
      orderBy: { ordinal: 'asc' },
      include: { finding: { select: { number: true, title: true, issued: true } } },
    },
  }) as const satisfies Prisma.ReInspectionInclude;

type Row = Prisma.ReInspectionGetPayload<{ include: ReturnType<typeof withItems> }>;

/** Visits after the report, latest first; parties see of each the findings that they may see. @throws Refusal `not-found`, `not-allowed` */
export async function listReInspections(
  ctx: Ctx,
  { surveyId, query }: { surveyId: string; query: PageInput },
): Promise<Page<ReInspection>> {
  const survey = await loadSurvey(ctx, surveyId);
  authorise(ctx.actor, survey, 'evidence.read', evidenceIsFor);
  const before = decodeCursor(query.cursor, uuidForm);
  const rows = await ctx.tx.reInspection.findMany({
    where: { surveyId, ...(before === undefined ? {} : { id: { lt: before } }) },
    include: withItems(ctx),
    orderBy: { id: 'desc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.id);
  const staff = isStaff(ctx.actor, survey);
  const whole = may(ctx.actor, survey, 'report.read');
  const shown = page.items.filter((row) => staff || row.items.length > 0);
  return { items: shown.map((row) => presentReInspection(row, { staff, whole })), next: page.next };
}

/** A visit that was just recorded, as the firm sees it. */
export async function getReInspection(ctx: Ctx, id: string): Promise<ReInspection> {
  const row = await ctx.tx.reInspection.findUniqueOrThrow({ where: { id }, include: withItems(ctx) });
  return presentReInspection(row, { staff: true, whole: true });
}

/** `whole`: with what was noted on the visit as a whole, which a yard doesn't read. */
function presentReInspection(row: Row, { staff, whole }: { staff: boolean; whole: boolean }): ReInspection {
  return {
    id: row.id,
    surveyId: row.surveyId,
    date: row.date.toISOString().slice(0, 10),
    place: row.place,
    condition: row.condition as AttendanceCondition,
    note: whole ? row.note : '',
    by: { name: row.byName, role: row.byRole },
    at: row.at.toISOString(),
    items: row.items.map((item) => ({
      findingId: item.findingId,
      number: item.finding.number,
      title: issuedTitle(item.finding),
      itemIds: item.itemIds,
      outcome: item.outcome as Outcome,
      note: item.note,
      limit: item.limit,
      limitUntil: dayOf(item.limitUntil),
      photoIds: staff ? item.photoIds : [],
      clearanceId: item.clearanceId,
      stateAfter: item.stateAfter as FindingState,
    })),
  };
}
