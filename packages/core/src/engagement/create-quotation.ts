import type { QuotationView, quotationCreate } from '@garboard/contract/quotations';
import { newId } from '@garboard/db/ids';
import { surveyIsEditable } from '@garboard/trade/states';
import type { SurveyState } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { clientParty } from './client-party.ts';
import { ratesSet } from './firm-rates.ts';
import { dateOf, presentQuotation } from './present-quotation.ts';
import { reckonLines } from './reckon-lines.ts';

/**
 * Drafts a quotation in the firm's currency; nobody outside the firm sees it until it is sent.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`; `wrong-state` without rates or for a closed survey
 */
export async function createQuotation(
  ctx: Ctx,
  input: { surveyId: string; quotation: z.output<typeof quotationCreate> },
): Promise<QuotationView> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const role = authorise(ctx.actor, survey, 'quotation.write', 'The survey firm writes quotations.');
  if (!surveyIsEditable(survey.state as SurveyState)) {
    throw wrongState('This survey is closed or cancelled. Reopen it before you quote for it.');
  }
  const { firmId, id: surveyId } = survey;
  const { partyId, lines, scope, validUntil } = input.quotation;
  const party = await clientParty(ctx, { surveyId, partyId });
  const { currency } = await ratesSet(ctx, firmId);
  await lockSurvey(ctx, surveyId);
  const last = await ctx.tx.quotation.findFirst({
    where: { surveyId },
    orderBy: { revision: 'desc' },
    select: { revision: true },
  });
  const row = await ctx.tx.quotation.create({
    data: {
      ...{ id: newId(), firmId, surveyId, revision: (last?.revision ?? 0) + 1 },
      ...{ partyId, addressee: party.name, currency, scope, validUntil: dateOf(validUntil) },
      ...reckonLines(lines),
    },
  });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'quotation.drafted', role },
    data: { revision: row.revision },
  });
  return presentQuotation(ctx, row, survey.timeZone);
}
