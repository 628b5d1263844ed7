import type { InvoiceView, invoiceFilter } from '@garboard/contract/invoices';
import type { Prisma } from '@garboard/db/database';
import { dayIn } from '@garboard/trade/due-dates';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { dateOf } from '../engagement/present-quotation.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { invoiceInclude, loadInvoice, presentInvoice, visibleInvoices } from './load-invoice.ts';

async function listWhere(
  ctx: Ctx,
  where: Prisma.InvoiceWhereInput,
  input: PageInput,
): Promise<Page<InvoiceView>> {
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.invoice.findMany({
    where: { AND: [where, visibleInvoices(ctx.actor), before ? { id: { lt: before } } : {}] },
    include: invoiceInclude(ctx.actor),
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: page.items.map((row) => presentInvoice(ctx, row)), next: page.next };
}

/** A survey's invoices, newest first; the client's are those sent. @throws Refusal `not-found`, `not-allowed` */
export async function listInvoices(
  ctx: Ctx,
  input: PageInput & { surveyId: string },
): Promise<Page<InvoiceView>> {
  const survey = await loadSurvey(ctx, input.surveyId);
  authorise(ctx.actor, survey, 'invoice.read', 'Invoices are between the firm and the client who pays.');
  return listWhere(ctx, { surveyId: survey.id }, input);
}

/** Invoices the actor may see, newest first. */
export async function listAllInvoices(
  ctx: Ctx,
  { state, q, ...page }: PageInput & z.output<typeof invoiceFilter>,
): Promise<Page<InvoiceView>> {
  const like = q ? { contains: q, mode: 'insensitive' as const } : undefined;
  const found = like
    ? { OR: [{ number: like }, { billTo: like }, { survey: { vessel: { name: like } } }] }
    : {};
  return listWhere(ctx, { AND: [ofState(ctx, state), found] }, page);
}

function ofState(ctx: Ctx, state: z.output<typeof invoiceFilter>['state']): Prisma.InvoiceWhereInput {
  const unpaid = { state: { in: ['sent', 'part-paid'] } };
  if (state === undefined) return {};
  if (state === 'unpaid') return unpaid;
  if (state === 'overdue') return { ...unpaid, dueOn: { lt: dateOf(dayIn('UTC', ctx.clock())) } };
  return { state };
}

/** An invoice the actor may see. @throws Refusal `not-found` */
export async function getInvoice(ctx: Ctx, id: string): Promise<InvoiceView> {
  return presentInvoice(ctx, await loadInvoice(ctx, id));
}
