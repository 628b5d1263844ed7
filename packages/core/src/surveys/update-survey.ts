import type { Survey, surveyPatch } from '@garboard/contract/surveys';
import { surveyIsEditable, surveyMayMove } from '@garboard/trade/states';
import { type SurveyState, surveyStateLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, staleVersion, wrongState } from '../problems.ts';
import { getSurvey } from './get-survey.ts';
import { type LoadedSurvey, loadSurvey } from './load-survey.ts';
import { replaceAttendances } from './replace-attendances.ts';
import { mustSign } from './surveyor.ts';

export interface UpdateSurvey {
  id: string;
  patch: z.output<typeof surveyPatch>;
  ifMatch?: number | undefined;
}

/** Changes a survey or moves it on. @throws Refusal `not-allowed`, `stale-version`, `wrong-state` */
export async function updateSurvey(ctx: Ctx, { id, patch, ifMatch }: UpdateSurvey): Promise<Survey> {
  const survey = await loadSurvey(ctx, id);
  const role = authorise(ctx.actor, survey, 'survey.edit', 'Only the survey firm may change the survey.');
  const { attendances, state, ...fields } = patch;
  checkMove(survey, state, { ...fields, attendances });
  await checkReferences(ctx, survey, fields);
  const changed = await ctx.tx.survey.updateMany({
    where: { id, state: survey.state, ...(ifMatch === undefined ? {} : { version: ifMatch }) },
    data: { ...fields, ...(state ? { state } : {}), version: { increment: 1 } },
  });
  if (changed.count === 0) throw staleVersion('survey');
  if (attendances) await replaceAttendances(ctx, { firmId: survey.firmId, surveyId: id, attendances });
  const moved = state && state !== survey.state;
  // A review of a record that is being written again is no longer asked for.
  if (moved && survey.state === 'in-review') {
    const open = { surveyId: id, state: 'asked' };
    await ctx.tx.review.updateMany({ where: open, data: { state: 'withdrawn' } });
  }
  await recordEvent(ctx, {
    firmId: survey.firmId,
    surveyId: id,
    kind: moved ? 'survey.moved' : 'survey.edited',
    role,
    data: moved ? { to: surveyStateLabels[state] } : { fields: Object.keys(patch) },
  });
  return getSurvey(ctx, id);
}

function checkMove(survey: LoadedSurvey, to: SurveyState | undefined, rest: Record<string, unknown>): void {
  const from = survey.state as SurveyState;
  if (to && !surveyMayMove(from, to)) {
    const how = to === 'issued' ? ' Issue the report instead.' : '';
    throw wrongState(
      `A survey that is “${surveyStateLabels[from]}” can’t become “${surveyStateLabels[to]}”.${how}`,
    );
  }
  if (to === 'issued' && survey.issuedAt === null)
    throw wrongState('Issue the report; that makes the survey issued.');
  const edits = Object.values(rest).some((value) => value !== undefined);
  if (edits && !surveyIsEditable(from)) {
    throw wrongState(
      `This survey is ${surveyStateLabels[from].toLowerCase()}. Reopen it before you change it.`,
    );
  }
}

async function checkReferences(
  ctx: Ctx,
  survey: LoadedSurvey,
  fields: Pick<UpdateSurvey['patch'], 'vesselId' | 'surveyorId' | 'leadPhotoId'>,
): Promise<void> {
  if (fields.surveyorId) await mustSign(ctx, survey.firmId, fields.surveyorId);
  if (fields.vesselId) {
    const vessel = await ctx.tx.vessel.findFirst({ where: { id: fields.vesselId, firmId: survey.firmId } });
    if (!vessel) throw invalidField('/vesselId', 'There is no such vessel in your firm.');
  }
  if (fields.leadPhotoId) {
    const photo = await ctx.tx.photo.findFirst({ where: { id: fields.leadPhotoId, surveyId: survey.id } });
    if (!photo) throw invalidField('/leadPhotoId', 'The cover photo must be one of this survey.');
  }
}
