import { agreementDocument, type QuotationView, reckonedLine } from '@garboard/contract/quotations';
import { dayIn } from '@garboard/trade/due-dates';
import { type AgreementDocument, agreementText } from '@garboard/trade/engagement';
import { writtenAmount } from '@garboard/trade/fees';
import { type Purpose, purposeLabels } from '@garboard/trade/vocabulary';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, staleVersion, wrongState } from '../problems.ts';
import { lockSurvey } from '../surveys/load-survey.ts';
import { ratesSet } from './firm-rates.ts';
import { type LoadedQuotation, loadQuotation, sha256Of } from './load-quotation.ts';
import { dayOf, presentQuotation } from './present-quotation.ts';

/**
 * Freezes a draft with the firm's terms into the text that the client is asked to accept, and makes its party the
 * one who pays. One that was sent before and not answered is replaced by it.
 *
 * @throws Refusal `not-found`, `not-allowed`, `stale-version`; `wrong-state` when it can't be sent as things stand
 */
export async function sendQuotation(
  ctx: Ctx,
  { id, ifMatch }: { id: string; ifMatch?: number | undefined },
): Promise<QuotationView> {
  const draft = await loadQuotation(ctx, id);
  const role = authorise(ctx.actor, draft.survey, 'quotation.write', 'The survey firm sends quotations.');
  if (draft.state !== 'draft') throw wrongState('This quotation was sent already.');
  const { firmId, surveyId } = draft;
  await lockSurvey(ctx, surveyId);
  const party = draft.partyId ? await ctx.tx.party.findUnique({ where: { id: draft.partyId } }) : null;
  if (!party)
    throw wrongState('The party it is addressed to was removed. Choose who is to pay, then send it.');
  const document = await freeze(ctx, draft);
  const text = agreementText(document);
  const sentAt = ctx.clock();
  const sent = await ctx.tx.quotation.updateMany({
    where: { id, state: 'draft', version: ifMatch ?? draft.version },
    data: {
      ...{
        state: 'sent',
        document: { ...document, lines: document.lines.map((line) => ({ ...line })) },
        text,
        textSha256: sha256Of(text),
        sentAt,
      },
      version: { increment: 1 },
    },
  });
  if (sent.count === 0) throw staleVersion('quotation');
  await ctx.tx.quotation.updateMany({
    where: { surveyId, state: 'sent', id: { not: id } },
    data: {
      ...{ state: 'withdrawn', decidedAt: sentAt, reason: `Replaced by revision ${draft.revision}` },
      version: { increment: 1 },
    },
  });
  await ctx.tx.party.updateMany({ where: { id: party.id, client: false }, data: { client: true } });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'quotation.sent', role },
    data: {
      ...{ revision: draft.revision, to: party.name, total: writtenAmount(draft.total, draft.currency) },
      textSha256: sha256Of(text),
    },
    tell: [party.personId],
  });
  const row = await ctx.tx.quotation.findUniqueOrThrow({ where: { id } });
  return presentQuotation(ctx, row, draft.survey.timeZone);
}

async function freeze(ctx: Ctx, draft: LoadedQuotation): Promise<AgreementDocument> {
  const { survey, firmId, revision, addressee, currency, net, tax, total, scope } = draft;
  const sentOn = dayIn(survey.timeZone, ctx.clock());
  const validUntil = dayOf(draft.validUntil);
  if (validUntil < sentOn) {
    throw invalidField('/validUntil', 'Its last day has passed. Give a later one, then send it.');
  }
  const terms = await ctx.tx.firmTerms.findFirst({ where: { firmId }, orderBy: { version: 'desc' } });
  if (!terms) {
    throw wrongState('Your firm has no terms of business yet. A principal writes them on the firm’s page.');
  }
  const { taxName } = await ratesSet(ctx, firmId);
  const { firm, vessel } = await ctx.tx.survey.findUniqueOrThrow({
    where: { id: survey.id },
    select: {
      firm: { select: { name: true, addressLines: true, email: true, phone: true } },
      vessel: { select: { name: true, builder: true, model: true, hullNumber: true, lengthOverallM: true } },
    },
  });
  const length = vessel.lengthOverallM === null ? null : `${vessel.lengthOverallM} m length overall`;
  const built = [vessel.builder, vessel.model].filter(Boolean).join(' ');
  const hull = vessel.hullNumber ? `hull number ${vessel.hullNumber}` : null;
  return agreementDocument.parse({
    ...{ firm, addressee, revision, sentOn, validUntil, currency, taxName, net, tax, total, scope },
    survey: { number: survey.number, purpose: purposeLabels[survey.purpose as Purpose] },
    vessel: { name: vessel.name, particulars: [built, length, hull].filter(Boolean).join(', ') },
    lines: reckonedLine.array().parse(draft.lines),
    terms: { version: terms.version, text: terms.text },
  });
}
