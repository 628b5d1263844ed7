import type { InvoiceView } from '@garboard/contract/invoices';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { settleRelease } from '../engagement/settle-release.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { lockSurvey } from '../surveys/load-survey.ts';
import { loadInvoice, presentInvoice } from './load-invoice.ts';

/**
 * Makes an invoice void; its number stays used, so that the row of numbers has no gap. A draft is discarded by it.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` when money has come in for it, or it is void already
 */
export async function voidInvoice(
  ctx: Ctx,
  { id, reason }: { id: string; reason: string },
): Promise<InvoiceView> {
  const before = await loadInvoice(ctx, id);
  const role = authorise(ctx.actor, before.survey, 'invoice.write', 'The survey firm makes invoices void.');
  const { firmId, surveyId } = before;
  await lockSurvey(ctx, surveyId);
  const changed = await ctx.tx.invoice.updateMany({
    where: { id, paid: 0, state: { in: ['draft', 'sent', 'paid'] } },
    data: { state: 'void', reason, version: { increment: 1 } },
  });
  if (changed.count === 0) {
    throw wrongState(
      before.state === 'void'
        ? 'This invoice is void already.'
        : 'Money has come in for this invoice. Take the payments back first, if they were recorded by mistake.',
    );
  }
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'invoice.voided', role },
    data: { number: before.number ?? '', reason },
  });
  await settleRelease(ctx, { firmId, surveyId, role });
  return presentInvoice(ctx, await loadInvoice(ctx, id));
}
