import type { QuotationView } from '@garboard/contract/quotations';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { loadQuotation, visibleQuotations } from './load-quotation.ts';
import { presentQuotation } from './present-quotation.ts';

/** A survey's quotations, newest first; the client's are those sent. @throws Refusal `not-found`, `not-allowed` */
export async function listQuotations(
  ctx: Ctx,
  input: PageInput & { surveyId: string },
): Promise<Page<QuotationView>> {
  const survey = await loadSurvey(ctx, input.surveyId);
  authorise(ctx.actor, survey, 'quotation.read', 'Quotations are between the firm and the client who pays.');
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.quotation.findMany({
    where: {
      AND: [{ surveyId: survey.id }, visibleQuotations(ctx.actor), before ? { id: { lt: before } } : {}],
    },
    omit: { text: true },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: page.items.map((row) => presentQuotation(ctx, row, survey.timeZone)), next: page.next };
}

/** A quotation the actor may see. @throws Refusal `not-found` */
export async function getQuotation(ctx: Ctx, id: string): Promise<QuotationView> {
  const row = await loadQuotation(ctx, id);
  return presentQuotation(ctx, row, row.survey.timeZone);
}
