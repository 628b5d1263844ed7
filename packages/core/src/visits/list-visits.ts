import type { VisitView } from '@garboard/contract/visits';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { presentVisit, visitInclude } from './load-visit.ts';

const timeAndId = /^\d{4}-\d\d-\d\dT[\d:.]+Z [0-9a-f-]{36}$/;

/** A survey's visits in order of time. @throws Refusal `not-found`, `not-allowed` */
export async function listVisits(
  ctx: Ctx,
  input: PageInput & { surveyId: string },
): Promise<Page<VisitView>> {
  const survey = await loadSurvey(ctx, input.surveyId);
  authorise(
    ctx.actor,
    survey,
    'visit.read',
    'Visits concern those who open the boat and those she is looked at for.',
  );
  const [time, id] = decodeCursor(input.cursor, timeAndId)?.split(' ') ?? [];
  const startsAt = new Date(time ?? 0);
  const after = time ? { OR: [{ startsAt: { gt: startsAt } }, { startsAt, id: { gt: id ?? '' } }] } : {};
  const rows = await ctx.tx.visit.findMany({
    where: { surveyId: survey.id, ...after },
    include: visitInclude(ctx.actor),
    orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => `${row.startsAt.toISOString()} ${row.id}`);
  return { items: page.items.map((row) => presentVisit(ctx, row)), next: page.next };
}
