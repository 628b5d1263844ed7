import { type PartyRole, partyRoleLabels } from '@garboard/trade/vocabulary';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { notFound } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { type PartyView, presentParty } from './list-parties.ts';

/** Releases what was issued to a party, or withdraws that; it takes effect at once. @throws Refusal `not-found` */
export async function releaseParty(
  ctx: Ctx,
  input: { surveyId: string; partyId: string; released: boolean },
): Promise<PartyView> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const role = authorise(ctx.actor, survey, 'party.release', 'Only the survey firm releases what it issued.');
  const where = { id: input.partyId, surveyId: survey.id };
  const changed = await ctx.tx.party.updateMany({
    where: { ...where, released: !input.released },
    data: { released: input.released },
  });
  const row = await ctx.tx.party.findFirst({
    where,
    include: { person: { select: { email: true, joinedAt: true } } },
  });
  if (!row) throw notFound('party');
  if (changed.count > 0) {
    await recordEvent(ctx, {
      firmId: survey.firmId,
      surveyId: survey.id,
      kind: input.released ? 'party.released' : 'party.release-withdrawn',
      role,
      data: { name: row.name, role: partyRoleLabels[row.role as PartyRole].toLowerCase() },
    });
  }
  return presentParty(row);
}
