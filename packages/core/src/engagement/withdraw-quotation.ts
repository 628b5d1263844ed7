import type { QuotationView } from '@garboard/contract/quotations';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { loadQuotation } from './load-quotation.ts';
import { presentQuotation } from './present-quotation.ts';

/** Takes back a quotation that wasn't accepted. @throws Refusal `not-found`, `not-allowed`, `wrong-state` */
export async function withdrawQuotation(
  ctx: Ctx,
  { id, reason }: { id: string; reason: string },
): Promise<QuotationView> {
  const before = await loadQuotation(ctx, id);
  const role = authorise(
    ctx.actor,
    before.survey,
    'quotation.write',
    'The survey firm withdraws quotations.',
  );
  const changed = await ctx.tx.quotation.updateMany({
    where: { id, state: { in: ['draft', 'sent'] } },
    data: {
      ...{ state: 'withdrawn', reason, decidedAt: ctx.clock(), decidedById: actorId(ctx.actor) },
      ...{ decidedBy: actorName(ctx.actor), version: { increment: 1 } },
    },
  });
  if (changed.count === 0) throw wrongState('This quotation was decided already and stays as it is.');
  const { firmId, surveyId, revision } = before;
  const party = before.partyId ? await ctx.tx.party.findUnique({ where: { id: before.partyId } }) : null;
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'quotation.withdrawn', role, data: { revision, reason } },
    // Nobody outside has seen a draft.
    tell: before.state === 'sent' && party ? [party.personId] : [],
  });
  const row = await ctx.tx.quotation.findUniqueOrThrow({ where: { id } });
  return presentQuotation(ctx, row, before.survey.timeZone);
}
