import type { InvoiceView } from '@garboard/contract/invoices';
import { addDays, dayIn } from '@garboard/trade/due-dates';
import { invoiceStateAt } from '@garboard/trade/engagement';
import { writtenAmount } from '@garboard/trade/fees';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { ratesOf } from '../engagement/firm-rates.ts';
import { dateOf } from '../engagement/present-quotation.ts';
import { settleRelease } from '../engagement/settle-release.ts';
import { recordEvent } from '../events/record-event.ts';
import { staleVersion, wrongState } from '../problems.ts';
import { lockSurvey } from '../surveys/load-survey.ts';
import { loadInvoice, presentInvoice } from './load-invoice.ts';

/**
 * Gives a draft the firm's next number of the year, its days, and shows it to the client.
 *
 * @throws Refusal `not-found`, `not-allowed`, `stale-version`; `wrong-state` unless it is a draft
 */
export async function sendInvoice(
  ctx: Ctx,
  { id, ifMatch }: { id: string; ifMatch?: number | undefined },
): Promise<InvoiceView> {
  const before = await loadInvoice(ctx, id);
  const role = authorise(ctx.actor, before.survey, 'invoice.write', 'The survey firm sends invoices.');
  if (before.state !== 'draft') throw wrongState('This invoice was sent or discarded already.');
  const { firmId, surveyId, total, currency, survey } = before;
  await lockSurvey(ctx, surveyId);
  const { paymentDays } = await ratesOf(ctx, firmId);
  const issuedOn = dayIn(survey.timeZone, ctx.clock());
  const number = await nextNumber(ctx, firmId, issuedOn.slice(0, 4));
  const sent = await ctx.tx.invoice.updateMany({
    where: { id, state: 'draft', version: ifMatch ?? before.version },
    data: {
      ...{ number, state: invoiceStateAt(0, total), version: { increment: 1 } },
      ...{ issuedOn: dateOf(issuedOn), dueOn: dateOf(addDays(issuedOn, paymentDays)) },
    },
  });
  // Undoes the number too: the transaction ends here.
  if (sent.count === 0) throw staleVersion('invoice');
  const clients = await ctx.tx.party.findMany({
    where: { surveyId, client: true },
    select: { personId: true },
  });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'invoice.sent', role },
    data: { number, total: writtenAmount(total, currency) },
    tell: clients.map((party) => party.personId),
  });
  await settleRelease(ctx, { firmId, surveyId, role });
  return presentInvoice(ctx, await loadInvoice(ctx, id));
}

/** The firm's next number in this year. The counter's row is held until the end, so no number is lost or doubled. */
async function nextNumber(ctx: Ctx, firmId: string, year: string): Promise<string> {
  const rows = await ctx.tx.$queryRaw<{ last: number }[]>`
    INSERT INTO invoice_counters (firm_id, year, last) VALUES (${firmId}::uuid, ${Number(year)}, 1)
    ON CONFLICT (firm_id, year) DO UPDATE SET last = invoice_counters.last + 1
    RETURNING last`;
  return `${year}-${String(rows[0]?.last ?? 1).padStart(4, '0')}`;
}
