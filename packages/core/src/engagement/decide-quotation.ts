import type { QuotationView } from '@garboard/contract/quotations';
import { dayIn } from '@garboard/trade/due-dates';
import { writtenAmount } from '@garboard/trade/fees';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { Refusal, wrongState } from '../problems.ts';
import { type LoadedQuotation, loadQuotation } from './load-quotation.ts';
import { dayOf, presentQuotation } from './present-quotation.ts';

const words = 'Only the client who is to pay decides on a quotation.';

/**
 * Accepts what was read: the typed name, the time, the network address and the text's hash go into the record, and
 * the text is kept as PDF.
 *
 * @param input.textSha256 of the text that was read; @param input.from the network address
 * @throws Refusal `not-found`, `not-allowed`; `stale-version` for another text; `already-decided`; `wrong-state`
 */
export async function acceptQuotation(
  ctx: Ctx,
  input: { id: string; typedName: string; textSha256: string; from: string },
): Promise<QuotationView> {
  const { id, typedName, textSha256, from } = input;
  const before = await loadQuotation(ctx, id);
  const role = authorise(ctx.actor, before.survey, 'quotation.decide', words);
  refuseDecided(before);
  if (textSha256 !== before.textSha256) {
    throw new Refusal(
      'stale-version',
      'This is not the text that was sent. Load the page again and read it anew.',
    );
  }
  if (dayOf(before.validUntil) < dayIn(before.survey.timeZone, ctx.clock())) {
    throw wrongState(
      'This quotation can’t be accepted any more: its last day has passed. Ask the firm for another.',
    );
  }
  await decide(ctx, before, { state: 'accepted', decidedBy: typedName, from, reason: '' });
  await enqueue(ctx.tx, 'quotation.print', { firmId: before.firmId, quotationId: id });
  await recordEvent(ctx, {
    ...{ firmId: before.firmId, surveyId: before.surveyId, kind: 'quotation.accepted', role },
    data: {
      ...{ revision: before.revision, typedName, from, textSha256 },
      total: writtenAmount(before.total, before.currency),
    },
  });
  return presentQuotation(ctx, await again(ctx, id), before.survey.timeZone);
}

/** Declines with a reason. @throws Refusal `not-found`, `not-allowed`, `already-decided` */
export async function declineQuotation(
  ctx: Ctx,
  { id, reason, from }: { id: string; reason: string; from: string },
): Promise<QuotationView> {
  const before = await loadQuotation(ctx, id);
  const role = authorise(ctx.actor, before.survey, 'quotation.decide', words);
  refuseDecided(before);
  await decide(ctx, before, { state: 'declined', decidedBy: actorName(ctx.actor), from, reason });
  await recordEvent(ctx, {
    ...{ firmId: before.firmId, surveyId: before.surveyId, kind: 'quotation.declined', role },
    data: { revision: before.revision, reason },
  });
  return presentQuotation(ctx, await again(ctx, id), before.survey.timeZone);
}

const again = (ctx: Ctx, id: string) => ctx.tx.quotation.findUniqueOrThrow({ where: { id } });

/** Says who decided and when. @throws Refusal unless it waits for the client */
function refuseDecided({ state, decidedBy, decidedAt, reason }: LoadedQuotation): void {
  if (state === 'sent') return;
  if (state === 'withdrawn') throw wrongState(`The firm has withdrawn this quotation: “${reason}”.`);
  const day = decidedAt?.toISOString().slice(0, 16).replace('T', ' ');
  throw new Refusal('already-decided', `This quotation was ${state} by ${decidedBy} at ${day} UTC.`);
}

async function decide(
  ctx: Ctx,
  before: LoadedQuotation,
  decision: { state: 'accepted' | 'declined'; decidedBy: string; from: string; reason: string },
): Promise<void> {
  const { state, decidedBy, from, reason } = decision;
  const changed = await ctx.tx.quotation.updateMany({
    where: { id: before.id, state: 'sent' },
    data: {
      ...{ state, decidedBy, reason, decidedAt: ctx.clock(), decidedById: actorId(ctx.actor) },
      ...{ decidedFrom: from, version: { increment: 1 } },
    },
  });
  if (changed.count > 0) return;
  refuseDecided(await loadQuotation(ctx, before.id));
}
