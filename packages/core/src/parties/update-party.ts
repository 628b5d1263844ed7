import type { partyPatch } from '@garboard/contract/surveys';
import { type PartyRole, partyRoleLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, firmRole } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, notAllowed, notFound, wrongState } from '../problems.ts';
import { type LoadedSurvey, loadSurvey } from '../surveys/load-survey.ts';
import { getParty, type PartyView } from './list-parties.ts';

/** @throws Refusal `invalid-input` for a role that never pays for a survey */
export function refuseClient(role: string): void {
  if (role === 'yard')
    throw invalidField('/client', 'A yard doesn’t pay for the survey; say so of somebody else.');
}

/** Who pays says it of others, and only once the firm has released the report to them. */
function refuseOwnWord(ctx: Ctx, survey: LoadedSurvey, personId: string): void {
  if (firmRole(ctx.actor, survey.firmId)) return;
  if (personId === actorId(ctx.actor)) throw notAllowed('Only the firm changes what is released to you.');
  if (!survey.parties.some((part) => part.client && part.released)) {
    throw wrongState(
      'The firm has not released the report to you yet; ask it to, then release it to others.',
    );
  }
}

/**
 * Releases what was issued to a party or withdraws that, for the firm and for who pays; the firm also says who pays.
 * It takes effect at once.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`, `wrong-state`
 */
export async function updateParty(
  ctx: Ctx,
  input: { surveyId: string; partyId: string; patch: z.output<typeof partyPatch> },
): Promise<PartyView> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const { released, client } = input.patch;
  const detail = 'Only the survey firm, and who pays for the survey, say to whom it is released.';
  const role = authorise(ctx.actor, survey, 'party.release', detail);
  if (client !== undefined && !firmRole(ctx.actor, survey.firmId)) {
    throw notAllowed('The firm says who pays for the survey.');
  }
  const party = await ctx.tx.party.findFirst({ where: { id: input.partyId, surveyId: survey.id } });
  if (!party) throw notFound('party');
  refuseOwnWord(ctx, survey, party.personId);
  if (client) refuseClient(party.role);

  const { firmId, id: surveyId } = survey;
  const data = { name: party.name, role: partyRoleLabels[party.role as PartyRole].toLowerCase() };
  const where = { id: party.id, surveyId };
  if (client !== undefined) {
    const changed = await ctx.tx.party.updateMany({ where: { ...where, client: !client }, data: { client } });
    const kind = client ? 'party.pays' : 'party.pays-no-more';
    if (changed.count > 0) await recordEvent(ctx, { firmId, surveyId, kind, role, data });
  }
  if (released !== undefined) {
    const changed = await ctx.tx.party.updateMany({
      where: { ...where, released: !released },
      data: { released },
    });
    const kind = released ? 'party.released' : 'party.release-withdrawn';
    const tell = [party.personId];
    if (changed.count > 0) await recordEvent(ctx, { firmId, surveyId, kind, role, data, tell });
  }
  return getParty(ctx, surveyId, party.id);
}
