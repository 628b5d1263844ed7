import type { partyCreate } from '@garboard/contract/surveys';
import { newId } from '@garboard/db/ids';
import { releasedByDefault } from '@garboard/trade/permissions';
import { partyRoleLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invitePerson } from '../people/invite-person.ts';
import { wrongState } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { type PartyView, presentParty } from './list-parties.ts';

/**
 * Invites a party: staff any role, a released owner a yard.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state` when that person has this role already
 */
export async function addParty(
  ctx: Ctx,
  input: { surveyId: string; party: z.output<typeof partyCreate> },
): Promise<PartyView> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const { role, name, email } = input.party;
  const action = role === 'yard' && survey.parties.length > 0 ? 'party.invite-yard' : 'party.invite';
  const asRole = authorise(
    ctx.actor,
    survey,
    action,
    'The firm invites parties; an owner may invite a yard.',
  );
  const person = await invitePerson(ctx, { name, email });
  const released = input.party.released ?? releasedByDefault.includes(role);
  const id = newId();
  const made = await ctx.tx.party.createMany({
    data: [{ id, firmId: survey.firmId, surveyId: survey.id, personId: person.id, role, name, released }],
    skipDuplicates: true,
  });
  if (made.count === 0)
    throw wrongState(`${email} is invited as ${partyRoleLabels[role].toLowerCase()} already.`);
  await recordEvent(ctx, {
    firmId: survey.firmId,
    surveyId: survey.id,
    kind: 'party.added',
    role: asRole,
    data: { name, role: partyRoleLabels[role].toLowerCase(), released },
  });
  const row = await ctx.tx.party.findUniqueOrThrow({
    where: { id },
    include: { person: { select: { email: true, joinedAt: true } } },
  });
  return presentParty(row);
}
