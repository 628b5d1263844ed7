import { type PartyRole, partyRoleLabels } from '@garboard/trade/vocabulary';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { notFound } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';

/** Ends a party's access at once. @throws Refusal `not-found`, `not-allowed` */
export async function removeParty(ctx: Ctx, input: { surveyId: string; partyId: string }): Promise<void> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const role = authorise(ctx.actor, survey, 'party.remove', 'Only the survey firm may remove a party.');
  const party = await ctx.tx.party.findFirst({ where: { id: input.partyId, surveyId: survey.id } });
  if (!party) throw notFound('party');
  const removed = await ctx.tx.party.deleteMany({ where: { id: party.id } });
  if (removed.count === 0) throw notFound('party');
  await recordEvent(ctx, {
    firmId: survey.firmId,
    surveyId: survey.id,
    kind: 'party.removed',
    role,
    data: { name: party.name, role: partyRoleLabels[party.role as PartyRole].toLowerCase() },
  });
}
