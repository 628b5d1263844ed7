import type { Role } from '@garboard/trade/permissions';
import { surveyIsEditable } from '@garboard/trade/states';
import { type SurveyState, surveyStateLabels } from '@garboard/trade/vocabulary';
import { authorise, type Standing } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';

/**
 * The role in which the actor may change this survey's photos.
 *
 * @throws Refusal `not-allowed` for anyone but the firm; `wrong-state` when the survey's record is shut.
 */
export function authorisePhotoWriting(ctx: Ctx, survey: Standing & { state: string }): Role {
  const role = authorise(ctx.actor, survey, 'photo.write', 'Only the survey firm may add or change photos.');
  const state = survey.state as SurveyState;
  if (!surveyIsEditable(state)) {
    const label = surveyStateLabels[state].toLowerCase();
    throw wrongState(
      `This survey is ${label}; its photos stay as they are. Reopen the survey to change them.`,
    );
  }
  return role;
}
