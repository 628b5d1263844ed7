import type { QuotationView, quotationPatch } from '@garboard/contract/quotations';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { staleVersion, wrongState } from '../problems.ts';
import { clientParty } from './client-party.ts';
import { loadQuotation } from './load-quotation.ts';
import { dateOf, presentQuotation } from './present-quotation.ts';
import { reckonLines } from './reckon-lines.ts';

export interface UpdateQuotation {
  id: string;
  patch: z.output<typeof quotationPatch>;
  ifMatch?: number | undefined;
}

/** Changes a draft. @throws Refusal `not-found`, `not-allowed`, `invalid-input`, `stale-version`; `wrong-state` once sent */
export async function updateQuotation(
  ctx: Ctx,
  { id, patch, ifMatch }: UpdateQuotation,
): Promise<QuotationView> {
  const before = await loadQuotation(ctx, id);
  authorise(ctx.actor, before.survey, 'quotation.write', 'The survey firm writes quotations.');
  if (before.state !== 'draft') {
    throw wrongState(
      'What was sent stays as it was sent. Draft a new quotation; sending it replaces this one.',
    );
  }
  const { partyId, lines, scope, validUntil } = patch;
  const party = partyId ? await clientParty(ctx, { surveyId: before.surveyId, partyId }) : null;
  const changed = await ctx.tx.quotation.updateMany({
    where: { id, state: 'draft', version: ifMatch ?? before.version },
    data: {
      ...(party ? { partyId: party.id, addressee: party.name } : {}),
      ...(lines ? reckonLines(lines) : {}),
      ...(scope === undefined ? {} : { scope }),
      ...(validUntil ? { validUntil: dateOf(validUntil) } : {}),
      version: { increment: 1 },
    },
  });
  if (changed.count === 0) throw staleVersion('quotation');
  const row = await ctx.tx.quotation.findUniqueOrThrow({ where: { id } });
  return presentQuotation(ctx, row, before.survey.timeZone);
}
