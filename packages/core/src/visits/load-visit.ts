import type { VisitView } from '@garboard/contract/visits';
import type { Prisma } from '@garboard/db/database';
import type { VisitAnswer, VisitState } from '@garboard/trade/engagement';
import type { AttendanceCondition, PartyRole } from '@garboard/trade/vocabulary';
import { type Actor, actorId } from '../access/actor.ts';
import { isStaff, may } from '../access/policy.ts';
import { ownParties, visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';

/** What a visit is read with: who was asked, and the survey as the actor stands to it. */
export const visitInclude = (actor: Actor) =>
  ({
    asks: { orderBy: { id: 'asc' } },
    survey: { include: { parties: { where: ownParties(actor) } } },
  }) satisfies Prisma.VisitInclude;

export type VisitRow = Prisma.VisitGetPayload<{ include: ReturnType<typeof visitInclude> }>;

/** A visit the actor may see. @throws Refusal `not-found` */
export async function loadVisit(ctx: Ctx, id: string): Promise<VisitRow> {
  const row = await ctx.tx.visit.findFirst({
    where: { id, survey: visibleSurveys(ctx.actor) },
    include: visitInclude(ctx.actor),
  });
  if (!row || !may(ctx.actor, row.survey, 'visit.read')) throw notFound('visit');
  return row;
}

/** The person's own answer, as long as they take part in the role in which they were asked. */
export function ownAsk(ctx: Ctx, row: VisitRow) {
  const parts = new Set(row.survey.parties.map((party) => party.id));
  return row.asks.find((ask) => ask.personId === actorId(ctx.actor) && parts.has(ask.partyId));
}

/** As the actor may see it: parties see what they were asked themselves, not what others answered. */
export function presentVisit(ctx: Ctx, row: VisitRow): VisitView {
  const staff = isStaff(ctx.actor, row.survey);
  const mine = ownAsk(ctx, row);
  return {
    id: row.id,
    surveyId: row.surveyId,
    state: row.state as VisitState,
    startsAt: row.startsAt.toISOString(),
    endsAt: row.endsAt.toISOString(),
    timeZone: row.survey.timeZone,
    place: row.place,
    condition: row.condition as AttendanceCondition,
    note: row.note,
    asks: row.asks
      .filter((ask) => staff || ask.id === mine?.id)
      .map((ask) => ({
        partyId: ask.partyId,
        name: ask.name,
        role: ask.role as PartyRole,
        answer: ask.answer as VisitAnswer,
        note: ask.note,
        answeredAt: ask.answeredAt?.toISOString() ?? null,
        mine: ask.id === mine?.id,
      })),
    version: row.version,
  };
}
