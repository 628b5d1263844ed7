import type { VisitView } from '@garboard/contract/visits';
import { newId } from '@garboard/db/ids';
import { dayIn } from '@garboard/trade/due-dates';
import { surveyStateLabels } from '@garboard/trade/vocabulary';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { wrongState } from '../problems.ts';
import { lockSurvey } from '../surveys/load-survey.ts';
import { loadVisit, presentVisit, type VisitRow } from './load-visit.ts';

const settled = () => wrongState('This visit was made or called off already.');

/** Calls a visit off and tells who was asked. @throws Refusal `not-found`, `not-allowed`, `wrong-state` */
export async function cancelVisit(
  ctx: Ctx,
  { id, reason }: { id: string; reason: string },
): Promise<VisitView> {
  const visit = await loadVisit(ctx, id);
  const role = authorise(ctx.actor, visit.survey, 'visit.write', 'The survey firm arranges visits.');
  const changed = await ctx.tx.visit.updateMany({
    where: { id, state: 'arranged' },
    data: { state: 'cancelled', sequence: { increment: 1 }, version: { increment: 1 } },
  });
  if (changed.count === 0) throw settled();
  const { firmId, surveyId, place, startsAt, survey } = visit;
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'visit.cancelled', role },
    data: { startsAt: startsAt.toISOString(), timeZone: survey.timeZone, place, reason },
    tell: visit.asks.map((ask) => ask.personId),
  });
  return presentVisit(ctx, await loadVisit(ctx, id));
}

/**
 * Records that a visit was made: it becomes an attendance of the survey, which is attended by that.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state`
 */
export async function attendVisit(ctx: Ctx, id: string): Promise<VisitView> {
  const visit = await loadVisit(ctx, id);
  const role = authorise(ctx.actor, visit.survey, 'visit.write', 'The survey firm records visits.');
  await lockSurvey(ctx, visit.surveyId);
  const changed = await ctx.tx.visit.updateMany({
    where: { id, state: 'arranged' },
    data: { state: 'attended', version: { increment: 1 } },
  });
  if (changed.count === 0) throw settled();
  await addAttendance(ctx, visit);
  const { firmId, surveyId, place, startsAt, survey } = visit;
  const moved = await ctx.tx.survey.updateMany({
    where: { id: surveyId, state: { in: ['enquiry', 'booked'] } },
    data: { state: 'attended' },
  });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'visit.attended', role },
    data: { startsAt: startsAt.toISOString(), timeZone: survey.timeZone, place },
  });
  if (moved.count > 0) {
    await recordEvent(ctx, {
      ...{ firmId, surveyId, kind: 'survey.moved', role, data: { to: surveyStateLabels.attended } },
    });
  }
  return presentVisit(ctx, await loadVisit(ctx, id));
}

/** As the record prints it; one that was written down by hand already isn't doubled. */
async function addAttendance(ctx: Ctx, visit: VisitRow): Promise<void> {
  const { firmId, surveyId, place, condition, startsAt, survey } = visit;
  const date = new Date(`${dayIn(survey.timeZone, startsAt)}T00:00:00Z`);
  const there = await ctx.tx.attendance.findMany({ where: { surveyId }, orderBy: { ordinal: 'asc' } });
  const written = there.some(
    (a) => a.date.getTime() === date.getTime() && a.place === place && a.condition === condition,
  );
  if (!written) {
    const ordinal = (there.at(-1)?.ordinal ?? -1) + 1;
    await ctx.tx.attendance.create({
      data: { id: newId(), firmId, surveyId, ordinal, date, place, condition },
    });
  }
  await ctx.tx.survey.update({ where: { id: surveyId }, data: { version: { increment: 1 } } });
}
