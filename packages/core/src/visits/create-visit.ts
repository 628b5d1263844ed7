import type { VisitView, visitCreate } from '@garboard/contract/visits';
import { newId } from '@garboard/db/ids';
import { surveyIsEditable } from '@garboard/trade/states';
import { type SurveyState, surveyStateLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { askParties, refuseImpossibleTimes } from './ask-parties.ts';
import { loadVisit, presentVisit } from './load-visit.ts';

/**
 * Arranges a visit and asks who is needed for it; an enquiry becomes booked.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`; `wrong-state` for a closed survey
 */
export async function createVisit(
  ctx: Ctx,
  input: { surveyId: string; visit: z.output<typeof visitCreate> },
): Promise<VisitView> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const role = authorise(ctx.actor, survey, 'visit.write', 'The survey firm arranges visits.');
  if (!surveyIsEditable(survey.state as SurveyState)) {
    throw wrongState('This survey is closed or cancelled. Reopen it before you arrange a visit.');
  }
  const { startsAt, endsAt, partyIds, ...rest } = input.visit;
  const [from, to] = [new Date(startsAt), new Date(endsAt)];
  refuseImpossibleTimes(from, to);
  const { firmId, id: surveyId } = survey;
  const id = newId();
  await ctx.tx.visit.create({ data: { ...rest, id, firmId, surveyId, startsAt: from, endsAt: to } });
  const tell = await askParties(ctx, { firmId, surveyId, visitId: id }, partyIds);
  const booked = await ctx.tx.survey.updateMany({
    where: { id: surveyId, state: 'enquiry' },
    data: { state: 'booked', version: { increment: 1 } },
  });
  const { timeZone } = survey;
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'visit.arranged', role, tell },
    data: { startsAt, timeZone, place: rest.place },
  });
  if (booked.count > 0) {
    await recordEvent(ctx, {
      ...{ firmId, surveyId, kind: 'survey.moved', role, data: { to: surveyStateLabels.booked } },
    });
  }
  return presentVisit(ctx, await loadVisit(ctx, id));
}
