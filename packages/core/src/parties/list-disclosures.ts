import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { type EventView, listWhere } from '../events/list-events.ts';
import type { Page, PageInput } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';

/** What says who could read the report and who did. */
const kinds = [
  'party.added',
  'party.released',
  'party.release-withdrawn',
  'party.removed',
  'party.pays',
  'party.pays-no-more',
  'report.issued',
  'report.viewed',
  'report.shared',
  'report.share-ended',
  'report.opened-by-link',
];

/** To whom a survey was released, from whom withdrawn and who looked at it, newest first. @throws Refusal `not-allowed` */
export async function listDisclosures(
  ctx: Ctx,
  { surveyId, ...page }: PageInput & { surveyId: string },
): Promise<Page<EventView>> {
  const survey = await loadSurvey(ctx, surveyId);
  authorise(ctx.actor, survey, 'party.release', 'The firm and who pays for the survey see who was shown it.');
  return listWhere(ctx, { surveyId: survey.id, kind: { in: kinds } }, page);
}
