import type { party } from '@garboard/contract/surveys';
import type { Prisma } from '@garboard/db/database';
import type { PartyRole } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { authorise, may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';

type PartyRow = Prisma.PartyGetPayload<{
  include: { person: { select: { email: true; joinedAt: true } } };
}>;
export type PartyView = z.output<typeof party>;

export function presentParty(row: PartyRow): PartyView {
  return {
    id: row.id,
    role: row.role as PartyRole,
    name: row.name,
    email: row.person.email,
    released: row.released,
    joined: row.person.joinedAt !== null,
    createdAt: row.createdAt.toISOString(),
  };
}

/** The parties to a survey; an owner sees the owner's own side and the yards. @throws Refusal `not-allowed` */
export async function listParties(
  ctx: Ctx,
  input: PageInput & { surveyId: string },
): Promise<Page<PartyView>> {
  const survey = await loadSurvey(ctx, input.surveyId);
  authorise(ctx.actor, survey, 'party.read', 'Only the firm and the owner see who else was invited.');
  const all = may(ctx.actor, survey, 'party.invite');
  const after = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.party.findMany({
    where: {
      surveyId: survey.id,
      ...(all ? {} : { role: { in: ['owner', 'yard'] } }),
      ...(after ? { id: { gt: after } } : {}),
    },
    include: { person: { select: { email: true, joinedAt: true } } },
    orderBy: { id: 'asc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: page.items.map(presentParty), next: page.next };
}
