import type { partyCreate } from '@garboard/contract/surveys';
import { newId } from '@garboard/db/ids';
import { releasedByDefault } from '@garboard/trade/permissions';
import { partyRoleLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { authorise, may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invitePerson } from '../people/invite-person.ts';
import { invalidField, notAllowed, wrongState } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { getParty, type PartyView } from './list-parties.ts';
import { giveFindings } from './name-yards.ts';
import { refuseClient } from './update-party.ts';

/**
 * Invites a party: staff any role, who pays and a released owner a yard. A yard sees the findings it is given.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`, `wrong-state` when that person has this role already
 */
export async function addParty(
  ctx: Ctx,
  input: { surveyId: string; party: z.output<typeof partyCreate> },
): Promise<PartyView> {
  const survey = await loadSurvey(ctx, input.surveyId);
  const { role, name, email, findingIds = [] } = input.party;
  const any = may(ctx.actor, survey, 'party.invite');
  const detail = 'The firm invites parties; who pays and an owner who has the report may invite a yard.';
  const action = role === 'yard' && !any ? 'party.invite-yard' : 'party.invite';
  const asRole = authorise(ctx.actor, survey, action, detail);
  const client = input.party.client ?? false;
  if (client && !any) throw notAllowed('The firm says who pays for the survey.');
  if (client) refuseClient(role);
  if (findingIds.length > 0 && role !== 'yard') {
    throw invalidField('/findingIds', 'Only a yard is given findings; leave this out for other roles.');
  }

  const person = await invitePerson(ctx, { name, email });
  const released = input.party.released ?? (client || releasedByDefault.includes(role));
  const { firmId, id: surveyId } = survey;
  const row = { id: newId(), firmId, surveyId, personId: person.id, role, name, released, client };
  const made = await ctx.tx.party.createMany({ data: [row], skipDuplicates: true });
  const word = partyRoleLabels[role].toLowerCase();
  if (made.count === 0) throw wrongState(`${email} is invited as ${word} already.`);
  await giveFindings(ctx, row, findingIds);
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'party.added', role: asRole, tell: [person.id] },
    data: { name, role: word, released },
  });
  if (client) {
    await recordEvent(ctx, {
      firmId,
      surveyId,
      kind: 'party.pays',
      role: asRole,
      data: { name, role: word },
    });
  }
  return getParty(ctx, surveyId, row.id);
}
