import type { Finding, findingQuery } from '@garboard/contract/findings';
import type { z } from 'zod';
import { visibleFindings } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { presentFindings } from './present-finding.ts';

/** A survey's findings in the order of the report. @throws Refusal `not-found` */
export async function listFindings(
  ctx: Ctx,
  query: z.output<typeof findingQuery> & { surveyId: string },
): Promise<Page<Finding>> {
  const survey = await loadSurvey(ctx, query.surveyId);
  const after = decodeCursor(query.cursor, /^\d{1,9}$/);
  const rows = await ctx.tx.finding.findMany({
    where: {
      AND: [
        { surveyId: survey.id },
        visibleFindings(ctx.actor),
        after ? { number: { gt: Number(after) } } : {},
        query.urgency ? { urgency: query.urgency } : {},
        query.state ? { state: query.state } : {},
      ],
    },
    include: { photos: true },
    orderBy: { number: 'asc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => String(row.number));
  return { items: await presentFindings(ctx, page.items, survey), next: page.next };
}
