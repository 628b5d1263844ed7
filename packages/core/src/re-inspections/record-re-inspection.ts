import type { ReInspection, reInspectionCreate } from '@garboard/contract/re-inspections';
import { newId } from '@garboard/db/ids';
import { dayIn } from '@garboard/trade/due-dates';
import { outcomeLabels } from '@garboard/trade/re-inspection';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { fromDay } from '../clearance/extension-rows.ts';
import { lockFindings } from '../clearance/lock-finding.ts';
import { idTaken, unlessTaken } from '../client-ids.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { invalidField, wrongState } from '../problems.ts';
import { applyOutcome } from './apply-outcome.ts';
import { getReInspection } from './list-re-inspections.ts';

export interface RecordReInspection {
  surveyId: string;
  visit: z.output<typeof reInspectionCreate>;
}

/**
 * Records a visit at which issued findings were looked at again, all of it or nothing. Where the surveyor decides, what
 * was put right is cleared at once and evidence that waits is decided; where the insurer decides, it becomes evidence
 * from the surveyor that waits for the insurer. With an id made by the client, sent again, it answers the one kept.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`; `wrong-state` naming the finding that can't be cleared
 */
export async function recordReInspection(ctx: Ctx, input: RecordReInspection): Promise<ReInspection> {
  const { visit } = input;
  const { survey, role } = await writableSurvey(ctx, input.surveyId, 'finding.re-inspect');
  const { firmId, id: surveyId } = survey;
  const { id = newId(), place, condition, note } = visit;
  if (visit.id) {
    const kept = await ctx.tx.reInspection.findUnique({ where: { id }, select: { surveyId: true } });
    if (kept && kept.surveyId !== surveyId) throw idTaken('visit');
    if (kept) return getReInspection(ctx, id);
  }
  refuseImpossibleVisit(survey, visit.date, ctx.clock());
  refuseTwice(visit.items);

  const at = ctx.clock();
  const by = { byId: actorId(ctx.actor), byName: actorName(ctx.actor), byRole: role };
  const date = fromDay(visit.date);
  await unlessTaken(
    ctx.tx.reInspection.create({
      data: { id, firmId, surveyId, date, place, condition, note, ...by, at },
    }),
    'visit',
  );
  await attend(ctx, { firmId, surveyId, date, place, condition });
  await lockFindings(
    ctx,
    visit.items.map((item) => item.findingId),
  );
  for (const [ordinal, seen] of visit.items.entries()) {
    const applied = await applyOutcome(ctx, {
      surveyId,
      visit: { id, date: visit.date, place },
      seen,
      ordinal,
    });
    const { outcome, itemIds, photoIds, findingId, limitUntil } = seen;
    await ctx.tx.reInspectionItem.create({
      data: {
        ...{
          id: newId(),
          firmId,
          surveyId,
          reInspectionId: id,
          findingId,
          ordinal,
          outcome,
          itemIds,
          photoIds,
        },
        ...{ note: seen.note, limit: seen.limit || null, limitUntil: limitUntil && fromDay(limitUntil) },
        ...{ clearanceId: applied.clearanceId, stateAfter: applied.stateAfter },
      },
    });
    const data = { place, outcome: outcomeLabels[outcome] };
    await recordEvent(ctx, { firmId, surveyId, findingId, kind: 'finding.re-inspected', role, data });
  }
  const count = new Set(visit.items.map((item) => item.findingId)).size;
  const data = { place, date: visit.date, count };
  await recordEvent(ctx, { firmId, surveyId, kind: 'survey.re-inspected', role, data });
  return getReInspection(ctx, id);
}

/** A visit is an attendance too; one that is down already stays once. */
async function attend(
  ctx: Ctx,
  visit: { firmId: string; surveyId: string; date: Date; place: string; condition: string },
): Promise<void> {
  const { surveyId } = visit;
  if (await ctx.tx.attendance.findFirst({ where: visit, select: { id: true } })) return;
  const last = await ctx.tx.attendance.aggregate({ where: { surveyId }, _max: { ordinal: true } });
  await ctx.tx.attendance.create({ data: { id: newId(), ...visit, ordinal: (last._max.ordinal ?? -1) + 1 } });
}

function refuseImpossibleVisit(
  survey: { issuedAt: Date | null; timeZone: string },
  date: string,
  now: Date,
): void {
  if (!survey.issuedAt) {
    throw wrongState('The survey report has not been issued yet, so there is nothing to look at again.');
  }
  if (date < dayIn(survey.timeZone, survey.issuedAt)) {
    throw invalidField('/date', 'That is before the report was issued. Give the day of the later visit.');
  }
  // Clocks aboard may be off, and east of here it may be tomorrow already.
  if (fromDay(date).getTime() > now.getTime() + 24 * 3_600_000) {
    throw invalidField('/date', 'A visit can’t be recorded before it was made.');
  }
}

function refuseTwice(items: RecordReInspection['visit']['items']): void {
  const seen = new Set<string>();
  for (const [place, { findingId, itemIds }] of items.entries()) {
    for (const key of itemIds.length > 0 ? itemIds.map((itemId) => `${findingId} ${itemId}`) : [findingId]) {
      const whole =
        seen.has(findingId) || (itemIds.length === 0 && [...seen].some((s) => s.startsWith(findingId)));
      if (seen.has(key) || whole)
        throw invalidField(`/items/${place}`, 'The same is listed twice. Say it once.');
      seen.add(key);
    }
  }
}
