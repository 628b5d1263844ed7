import type { Survey, surveyCreate } from '@garboard/contract/surveys';
import { newId } from '@garboard/db/ids';
import { dayIn } from '@garboard/trade/due-dates';
import type { z } from 'zod';
import { actorId } from '../access/actor.ts';
import { visibleVessels } from '../access/scopes.ts';
import { workingFirm } from '../access/working-firm.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField } from '../problems.ts';
import { getSurvey } from './get-survey.ts';
import { replaceAttendances } from './replace-attendances.ts';
import { mustSign } from './surveyor.ts';

/** Opens a survey of one of the firm's vessels and gives it the firm's next number. */
export async function createSurvey(ctx: Ctx, input: z.output<typeof surveyCreate>): Promise<Survey> {
  const { attendances, surveyorId, ...fields } = input;
  const vessel = await ctx.tx.vessel.findFirst({
    where: { AND: [{ id: input.vesselId }, visibleVessels(ctx.actor)] },
  });
  if (!vessel) throw invalidField('/vesselId', 'There is no such vessel in your firm; record it first.');
  const { firmId, role } = workingFirm(ctx.actor, vessel.firmId, 'survey.create');
  const signer = surveyorId ?? (role === 'office' ? null : actorId(ctx.actor));
  if (signer) await mustSign(ctx, firmId, signer);
  const id = newId();
  const number = await nextNumber(ctx, firmId, input.timeZone);
  await ctx.tx.survey.create({
    data: {
      id,
      firmId,
      number,
      ...fields,
      state: attendances.length > 0 ? 'booked' : 'enquiry',
      surveyorId: signer,
    },
  });
  await replaceAttendances(ctx, { firmId, surveyId: id, attendances });
  await recordEvent(ctx, { firmId, surveyId: id, kind: 'survey.created', role, data: { number } });
  return getSurvey(ctx, id);
}

/** The firm's next number in this year. The counter's row is held until the end, so no number is lost or doubled. */
async function nextNumber(ctx: Ctx, firmId: string, timeZone: string): Promise<string> {
  const year = Number(dayIn(timeZone, ctx.clock()).slice(0, 4));
  const rows = await ctx.tx.$queryRaw<{ last: number }[]>`
    INSERT INTO survey_counters (firm_id, year, last) VALUES (${firmId}::uuid, ${year}, 1)
    ON CONFLICT (firm_id, year) DO UPDATE SET last = survey_counters.last + 1
    RETURNING last`;
  return `${year}-${String(rows[0]?.last ?? 1).padStart(4, '0')}`;
}
