import type { me } from '@garboard/contract/people';
import type { FirmRole, PartyRole } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { membershipsOf } from '../access/actor.ts';
import { ownParties } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notAllowed } from '../problems.ts';

/** The signed-in person, the firms they work for and the surveys they are party to (the newest 500). */
export async function getMe(ctx: Ctx): Promise<z.output<typeof me>> {
  if (ctx.actor.kind !== 'person') throw notAllowed('Only a person can ask this.');
  const { personId, name, email } = ctx.actor;
  const members = await ctx.tx.firmMember.findMany({
    where: { personId, firmId: { in: membershipsOf(ctx.actor).map((m) => m.firmId) } },
    include: { firm: { select: { id: true, name: true } } },
    orderBy: { id: 'asc' },
  });
  const parties = await ctx.tx.party.findMany({
    where: ownParties(ctx.actor),
    include: {
      survey: {
        select: { number: true, vessel: { select: { name: true } }, firm: { select: { name: true } } },
      },
    },
    orderBy: { id: 'desc' },
    take: 500,
  });
  return {
    person: { id: personId, name, email },
    firmRoles: members.map((m) => ({ firm: m.firm, role: m.role as FirmRole })),
    parties: parties.map((p) => ({
      surveyId: p.surveyId,
      surveyNumber: p.survey.number,
      vesselName: p.survey.vessel.name,
      firmId: p.firmId,
      firmName: p.survey.firm.name,
      role: p.role as PartyRole,
      released: p.released,
    })),
  };
}
