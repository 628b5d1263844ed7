import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { invalidField } from '../problems.ts';

/** Which visit of which survey. */
interface OfVisit {
  firmId: string;
  surveyId: string;
  visitId: string;
}

/**
 * Asks exactly these parties to a visit: new ones are asked, those left out are not asked any more.
 *
 * @returns the people of all who are asked now
 * @throws Refusal `invalid-input` for somebody who isn't a party to the survey
 */
export async function askParties(ctx: Ctx, of: OfVisit, partyIds: readonly string[]): Promise<string[]> {
  const wanted = [...new Set(partyIds)];
  const parties = await ctx.tx.party.findMany({ where: { id: { in: wanted }, surveyId: of.surveyId } });
  if (parties.length < wanted.length) {
    throw invalidField('/partyIds', 'Ask parties of this survey only; invite whoever is missing first.');
  }
  await ctx.tx.visitAsk.deleteMany({ where: { visitId: of.visitId, partyId: { notIn: wanted } } });
  await ctx.tx.visitAsk.createMany({
    data: parties.map(({ id: partyId, personId, name, role }) => ({
      ...{ id: newId(), ...of, partyId, personId, name, role },
    })),
    skipDuplicates: true,
  });
  return parties.map((party) => party.personId);
}

/** @throws Refusal `invalid-input` unless it ends after it begins, and within two weeks */
export function refuseImpossibleTimes(startsAt: Date, endsAt: Date): void {
  if (endsAt <= startsAt) throw invalidField('/endsAt', 'A visit ends after it begins.');
  if (endsAt.getTime() - startsAt.getTime() > 14 * 86_400_000) {
    throw invalidField('/endsAt', 'A visit of more than two weeks: check the days, or arrange several.');
  }
}
