import type { memberCreate } from '@garboard/contract/people';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { invitePerson } from '../people/invite-person.ts';
import { wrongState } from '../problems.ts';
import { type MemberView, presentMember } from './list-members.ts';
import { loadFirm, mustBePrincipal } from './load-firm.ts';

/** Invites a colleague. @throws Refusal `not-allowed`, `wrong-state` when they belong to the firm already */
export async function addMember(
  ctx: Ctx,
  input: { firmId: string; member: z.output<typeof memberCreate> },
): Promise<MemberView> {
  await loadFirm(ctx, input.firmId);
  mustBePrincipal(ctx, input.firmId);
  const { role, name, email, qualifications } = input.member;
  const person = await invitePerson(ctx, { name, email });
  const made = await ctx.tx.firmMember.createMany({
    data: [{ id: newId(), firmId: input.firmId, personId: person.id, role, qualifications }],
    skipDuplicates: true,
  });
  if (made.count === 0) throw wrongState(`${email} belongs to the firm already.`);
  const row = await ctx.tx.firmMember.findUniqueOrThrow({
    where: { firmId_personId: { firmId: input.firmId, personId: person.id } },
    include: { person: true },
  });
  return presentMember(row);
}
