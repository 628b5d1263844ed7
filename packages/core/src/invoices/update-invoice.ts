import type { InvoiceView, invoicePatch } from '@garboard/contract/invoices';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { reckonLines } from '../engagement/reckon-lines.ts';
import { staleVersion, wrongState } from '../problems.ts';
import { loadInvoice, presentInvoice } from './load-invoice.ts';

export interface UpdateInvoice {
  id: string;
  patch: z.output<typeof invoicePatch>;
  ifMatch?: number | undefined;
}

/** Changes a draft. @throws Refusal `not-found`, `not-allowed`, `invalid-input`, `stale-version`; `wrong-state` once sent */
export async function updateInvoice(ctx: Ctx, { id, patch, ifMatch }: UpdateInvoice): Promise<InvoiceView> {
  const before = await loadInvoice(ctx, id);
  authorise(ctx.actor, before.survey, 'invoice.write', 'The survey firm writes invoices.');
  if (before.state !== 'draft') {
    throw wrongState('An invoice stays as it was sent. Make it void and draft another one.');
  }
  const changed = await ctx.tx.invoice.updateMany({
    where: { id, state: 'draft', version: ifMatch ?? before.version },
    data: {
      ...(patch.billTo === undefined ? {} : { billTo: patch.billTo }),
      ...(patch.lines ? reckonLines(patch.lines) : {}),
      version: { increment: 1 },
    },
  });
  if (changed.count === 0) throw staleVersion('invoice');
  return presentInvoice(ctx, await loadInvoice(ctx, id));
}
