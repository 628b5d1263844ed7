import type { InvoiceView } from '@garboard/contract/invoices';
import { reckonedLine } from '@garboard/contract/quotations';
import type { Prisma } from '@garboard/db/database';
import { dayIn } from '@garboard/trade/due-dates';
import type { InvoiceState } from '@garboard/trade/engagement';
import { type Actor, firmRole, staffFirmIds } from '../access/actor.ts';
import { ownParties } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { dayOf } from '../engagement/present-quotation.ts';
import { notFound } from '../problems.ts';

/** Invoices of the actor's own firms; of others those sent for a survey that the actor pays for. */
export function visibleInvoices(actor: Actor): Prisma.InvoiceWhereInput {
  const own = { firmId: { in: staffFirmIds(actor) } };
  if (actor.kind === 'system') return own;
  const paid = { parties: { some: { ...ownParties(actor), client: true } } };
  return { OR: [own, { state: { not: 'draft' }, number: { not: null }, survey: paid }] };
}

/** What an invoice is read with. */
export const invoiceInclude = (actor: Actor) =>
  ({
    payments: { orderBy: { id: 'asc' } },
    survey: {
      include: {
        vessel: { select: { name: true } },
        parties: { where: ownParties(actor) },
      },
    },
  }) satisfies Prisma.InvoiceInclude;

export type InvoiceRow = Prisma.InvoiceGetPayload<{ include: ReturnType<typeof invoiceInclude> }>;

/** An invoice the actor may see. @throws Refusal `not-found` */
export async function loadInvoice(ctx: Ctx, id: string): Promise<InvoiceRow> {
  const row = await ctx.tx.invoice.findFirst({
    where: { AND: [{ id }, visibleInvoices(ctx.actor)] },
    include: invoiceInclude(ctx.actor),
  });
  if (!row) throw notFound('invoice');
  return row;
}

/** As the actor may see it: payments one by one, and what the bank said of them, are for the firm alone. */
export function presentInvoice(ctx: Ctx, row: InvoiceRow): InvoiceView {
  const { survey } = row;
  const dueOn = row.dueOn && dayOf(row.dueOn);
  const unpaid = row.state === 'sent' || row.state === 'part-paid';
  const staff = firmRole(ctx.actor, row.firmId) !== null;
  return {
    id: row.id,
    surveyId: row.surveyId,
    surveyNumber: survey.number,
    vesselName: survey.vessel.name,
    quotationId: row.quotationId,
    number: row.number,
    state: row.state as InvoiceState,
    overdue: unpaid && dueOn !== null && dueOn < dayIn(survey.timeZone, ctx.clock()),
    billTo: row.billTo,
    currency: row.currency,
    taxName: row.taxName,
    lines: reckonedLine.array().parse(row.lines),
    net: row.net,
    tax: row.tax,
    total: row.total,
    paid: row.paid,
    issuedOn: row.issuedOn && dayOf(row.issuedOn),
    dueOn,
    reason: row.reason,
    paymentWords: row.paymentWords,
    payments: staff
      ? row.payments.map((payment) => ({
          id: payment.id,
          amount: payment.amount,
          paidOn: dayOf(payment.paidOn),
          note: payment.note,
          recordedBy: payment.recordedBy,
          recordedAt: payment.createdAt.toISOString(),
        }))
      : [],
    version: row.version,
  };
}
