import type { InvoiceView, paymentCreate } from '@garboard/contract/invoices';
import { newId } from '@garboard/db/ids';
import { addDays, dayIn } from '@garboard/trade/due-dates';
import { invoiceStateAt } from '@garboard/trade/engagement';
import { writtenAmount } from '@garboard/trade/fees';
import type { z } from 'zod';
import { actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { dateOf } from '../engagement/present-quotation.ts';
import { settleRelease } from '../engagement/settle-release.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, notFound, wrongState } from '../problems.ts';
import { lockSurvey } from '../surveys/load-survey.ts';
import { type InvoiceRow, loadInvoice, presentInvoice } from './load-invoice.ts';

const words = 'The survey firm records what came in.';

/**
 * Records money that came in; once all of it has, a report withheld until then is handed over.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input` for more than is open; `wrong-state`
 */
export async function recordPayment(
  ctx: Ctx,
  input: { id: string; payment: z.output<typeof paymentCreate> },
): Promise<InvoiceView> {
  const { surveyId } = await loadInvoice(ctx, input.id);
  // Money of one survey is recorded one after the other, so that nothing is added to a sum of before.
  await lockSurvey(ctx, surveyId);
  const invoice = await loadInvoice(ctx, input.id);
  const role = authorise(ctx.actor, invoice.survey, 'invoice.write', words);
  const { amount, paidOn, note } = input.payment;
  if (invoice.state !== 'sent' && invoice.state !== 'part-paid') {
    throw wrongState('Money is recorded for an invoice that was sent and isn’t paid or void.');
  }
  const open = invoice.total - invoice.paid;
  if (amount > open) {
    const left = writtenAmount(open, invoice.currency);
    throw invalidField('/amount', `Only ${left} is still open. Record what belongs to this invoice.`);
  }
  // A day more than today here: where the money came in it may be tomorrow already.
  if (paidOn > addDays(dayIn('UTC', ctx.clock()), 1)) {
    throw invalidField('/paidOn', 'Money can’t have come in on a day that is still to come.');
  }
  await ctx.tx.invoicePayment.create({
    data: {
      ...{ id: newId(), firmId: invoice.firmId, invoiceId: invoice.id, amount, note },
      ...{ paidOn: dateOf(paidOn), recordedBy: actorName(ctx.actor), createdAt: ctx.clock() },
    },
  });
  return settle(ctx, invoice, { change: amount, role, kind: 'payment.recorded' });
}

/** Takes back a payment recorded by mistake. @throws Refusal `not-found`, `not-allowed`, `wrong-state` */
export async function removePayment(
  ctx: Ctx,
  input: { id: string; paymentId: string },
): Promise<InvoiceView> {
  const { surveyId } = await loadInvoice(ctx, input.id);
  await lockSurvey(ctx, surveyId);
  const invoice = await loadInvoice(ctx, input.id);
  const role = authorise(ctx.actor, invoice.survey, 'invoice.write', words);
  const payment = invoice.payments.find(({ id }) => id === input.paymentId);
  if (!payment) throw notFound('payment');
  await ctx.tx.invoicePayment.deleteMany({ where: { id: payment.id } });
  return settle(ctx, invoice, { change: -payment.amount, role, kind: 'payment.taken-back' });
}

async function settle(
  ctx: Ctx,
  invoice: InvoiceRow,
  { change, role, kind }: { change: number; role: string; kind: 'payment.recorded' | 'payment.taken-back' },
): Promise<InvoiceView> {
  const { id, firmId, surveyId, currency, total } = invoice;
  const paid = invoice.paid + change;
  await ctx.tx.invoice.updateMany({
    where: { id, paid: invoice.paid },
    data: { paid, state: invoiceStateAt(paid, total), version: { increment: 1 } },
  });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind, role },
    data: { number: invoice.number ?? '', amount: writtenAmount(Math.abs(change), currency) },
  });
  await settleRelease(ctx, { firmId, surveyId, role });
  return presentInvoice(ctx, await loadInvoice(ctx, id));
}
