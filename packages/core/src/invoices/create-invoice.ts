import type { InvoiceView, invoiceCreate } from '@garboard/contract/invoices';
import { reckonedLine } from '@garboard/contract/quotations';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { ratesSet } from '../engagement/firm-rates.ts';
import { reckonLines } from '../engagement/reckon-lines.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, wrongState } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { loadInvoice, presentInvoice } from './load-invoice.ts';

/**
 * Drafts an invoice, from an accepted quotation or from lines of its own; it has no number until it is sent.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`; `wrong-state` without rates or for what wasn't accepted
 */
export async function createInvoice(
  ctx: Ctx,
  input: { surveyId: string; invoice: z.output<typeof invoiceCreate> },
): Promise<InvoiceView> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const role = authorise(ctx.actor, survey, 'invoice.write', 'The survey firm writes invoices.');
  const { firmId, id: surveyId } = survey;
  const { quotationId } = input.invoice;
  const rates = await ratesSet(ctx, firmId);
  const quotation = quotationId ? await accepted(ctx, surveyId, quotationId) : null;
  const lines = input.invoice.lines ?? quotation?.lines;
  const billTo = input.invoice.billTo ?? quotation?.billTo;
  if (!lines) throw invalidField('/lines', 'Give lines, or the accepted quotation that they come from.');
  if (!billTo) throw invalidField('/billTo', 'Say to whom it is made out.');
  const id = newId();
  await ctx.tx.invoice.create({
    data: {
      ...{ id, firmId, surveyId, billTo, ...reckonLines(lines) },
      quotationId: quotationId ?? null,
      currency: quotation?.currency ?? input.invoice.currency ?? rates.currency,
      taxName: quotation?.taxName ?? rates.taxName,
      paymentWords: rates.paymentWords,
    },
  });
  await recordEvent(ctx, { firmId, surveyId, kind: 'invoice.drafted', role });
  return presentInvoice(ctx, await loadInvoice(ctx, id));
}

async function accepted(ctx: Ctx, surveyId: string, quotationId: string) {
  const row = await ctx.tx.quotation.findFirst({ where: { id: quotationId, surveyId } });
  if (!row) throw invalidField('/quotationId', 'There is no such quotation of this survey.');
  if (row.state !== 'accepted') throw wrongState('Only an accepted quotation can be invoiced as it stands.');
  const lines = reckonedLine.array().parse(row.lines);
  const document = row.document as { taxName?: string } | null;
  return {
    lines: lines.map(({ net: _net, tax: _tax, ...line }) => line),
    billTo: row.addressee,
    currency: row.currency,
    taxName: document?.taxName ?? '',
  };
}
