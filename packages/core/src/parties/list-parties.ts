import type { party } from '@garboard/contract/surveys';
import type { Prisma } from '@garboard/db/database';
import type { PartyRole } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { authorise, may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { notFound } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';

const withPerson = {
  person: { select: { email: true, joinedAt: true, mailProblem: true } },
  findings: { select: { findingId: true }, orderBy: { findingId: 'asc' } },
} satisfies Prisma.PartyInclude;
type PartyRow = Prisma.PartyGetPayload<{ include: typeof withPerson }>;
export type PartyView = z.output<typeof party>;

/** Presents parties to one survey; when each last opened a document comes in one query for all. */
async function presentParties(ctx: Ctx, surveyId: string, rows: readonly PartyRow[]): Promise<PartyView[]> {
  const seen = await ctx.tx.event.groupBy({
    by: ['actorId'],
    where: { surveyId, kind: 'report.viewed', actorId: { in: rows.map((row) => row.personId) } },
    _max: { at: true },
  });
  const viewed = new Map(seen.map((row) => [row.actorId, row._max.at]));
  return rows.map((row) => ({
    id: row.id,
    role: row.role as PartyRole,
    name: row.name,
    email: row.person.email,
    released: row.released,
    client: row.client,
    findingIds: row.findings.map((finding) => finding.findingId),
    viewedAt: viewed.get(row.personId)?.toISOString() ?? null,
    joined: row.person.joinedAt !== null,
    mailRefused: row.person.mailProblem !== null,
    createdAt: row.createdAt.toISOString(),
  }));
}

/** One party as it stands now. @throws Refusal `not-found` */
export async function getParty(ctx: Ctx, surveyId: string, id: string): Promise<PartyView> {
  const row = await ctx.tx.party.findFirst({ where: { id, surveyId }, include: withPerson });
  const [view] = row ? await presentParties(ctx, surveyId, [row]) : [];
  if (!view) throw notFound('party');
  return view;
}

/**
 * The parties to a survey: to the firm and to who pays all of them, to an owner the owner's own side and the yards.
 *
 * @throws Refusal `not-allowed`
 */
export async function listParties(
  ctx: Ctx,
  input: PageInput & { surveyId: string },
): Promise<Page<PartyView>> {
  const survey = await loadSurvey(ctx, input.surveyId);
  authorise(
    ctx.actor,
    survey,
    'party.read',
    'Only the firm, who pays and the owner see who else was invited.',
  );
  const all = may(ctx.actor, survey, 'party.release');
  const after = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.party.findMany({
    where: {
      surveyId: survey.id,
      ...(all ? {} : { role: { in: ['owner', 'yard'] } }),
      ...(after ? { id: { gt: after } } : {}),
    },
    include: withPerson,
    orderBy: { id: 'asc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: await presentParties(ctx, survey.id, page.items), next: page.next };
}
