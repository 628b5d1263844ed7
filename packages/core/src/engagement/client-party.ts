import type { Ctx } from '../context.ts';
import { invalidField } from '../problems.ts';

/** The party who is to pay. @throws Refusal `invalid-input` for somebody who can't be */
export async function clientParty(ctx: Ctx, { surveyId, partyId }: { surveyId: string; partyId: string }) {
  const party = await ctx.tx.party.findFirst({ where: { id: partyId, surveyId } });
  if (!party) throw invalidField('/partyId', 'There is no such party to this survey; invite them first.');
  if (party.role === 'yard') {
    throw invalidField('/partyId', 'A yard does not pay for a survey; choose whom it is made for.');
  }
  return party;
}
