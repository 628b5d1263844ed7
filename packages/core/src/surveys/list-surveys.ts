import type { Survey, surveyQuery } from '@garboard/contract/surveys';
import type { z } from 'zod';
import { visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, uuidForm } from '../paging.ts';
import { presentSurveys } from './count-issued.ts';
import { surveyInclude } from './present-survey.ts';

/** Surveys the actor may see, newest first; `q` finds part of the number or the vessel's name. */
export async function listSurveys(ctx: Ctx, query: z.output<typeof surveyQuery>): Promise<Page<Survey>> {
  const before = decodeCursor(query.cursor, uuidForm);
  const like = query.q ? { contains: query.q, mode: 'insensitive' as const } : undefined;
  const rows = await ctx.tx.survey.findMany({
    where: {
      AND: [
        visibleSurveys(ctx.actor),
        before ? { id: { lt: before } } : {},
        query.state ? { state: query.state } : {},
        query.vesselId ? { vesselId: query.vesselId } : {},
        like ? { OR: [{ number: like }, { vessel: { name: like } }] } : {},
      ],
    },
    include: surveyInclude(ctx.actor),
    orderBy: { id: 'desc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.id);
  return { items: await presentSurveys(ctx, page.items), next: page.next };
}
