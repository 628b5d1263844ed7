import type { VisitView, visitPatch } from '@garboard/contract/visits';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { staleVersion, wrongState } from '../problems.ts';
import { askParties, refuseImpossibleTimes } from './ask-parties.ts';
import { loadVisit, presentVisit } from './load-visit.ts';

export interface UpdateVisit {
  id: string;
  patch: z.output<typeof visitPatch>;
  ifMatch?: number | undefined;
}

/**
 * Moves or changes a visit. Whoever answered for another time or place is asked again, and calendars are told by a
 * higher sequence.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`, `stale-version`; `wrong-state` once made or called off
 */
export async function updateVisit(ctx: Ctx, { id, patch, ifMatch }: UpdateVisit): Promise<VisitView> {
  const before = await loadVisit(ctx, id);
  const role = authorise(ctx.actor, before.survey, 'visit.write', 'The survey firm arranges visits.');
  if (before.state !== 'arranged') {
    throw wrongState('This visit was made or called off already. Arrange another one instead.');
  }
  const { startsAt, endsAt, partyIds, ...rest } = patch;
  const from = startsAt ? new Date(startsAt) : before.startsAt;
  const to = endsAt ? new Date(endsAt) : before.endsAt;
  refuseImpossibleTimes(from, to);
  const moved =
    from.getTime() !== before.startsAt.getTime() ||
    to.getTime() !== before.endsAt.getTime() ||
    (rest.place !== undefined && rest.place !== before.place);
  const told = moved || (rest.note !== undefined && rest.note !== before.note);
  const changed = await ctx.tx.visit.updateMany({
    where: { id, state: 'arranged', version: ifMatch ?? before.version },
    data: {
      ...{ ...rest, startsAt: from, endsAt: to, version: { increment: 1 } },
      ...(told ? { sequence: { increment: 1 } } : {}),
    },
  });
  if (changed.count === 0) throw staleVersion('visit');
  const { firmId, surveyId } = before;
  if (moved) {
    await ctx.tx.visitAsk.updateMany({
      where: { visitId: id },
      data: { answer: 'asked', note: '', answeredAt: null },
    });
  }
  const asked = partyIds
    ? await askParties(ctx, { firmId, surveyId, visitId: id }, partyIds)
    : before.asks.map((ask) => ask.personId);
  const known = new Set(before.asks.map((ask) => ask.personId));
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: moved ? 'visit.moved' : 'visit.changed', role },
    data: {
      ...{ startsAt: from.toISOString(), timeZone: before.survey.timeZone },
      place: rest.place ?? before.place,
    },
    tell: told ? asked : asked.filter((personId) => !known.has(personId)),
  });
  return presentVisit(ctx, await loadVisit(ctx, id));
}
