import type { Report } from '@garboard/contract/reports';
import { newId } from '@garboard/db/ids';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { wrongState } from '../problems.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { freezeSnapshot, type IssuableKind } from './freeze-snapshot.ts';
import { latestIssued, presentReport } from './present-report.ts';

/**
 * Asks for a draft of a document, to be looked at by the firm. It has no number, opens and freezes nothing, and its
 * photos may still be deleted.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` while one is being made.
 */
export async function requestPreview(
  ctx: Ctx,
  { surveyId, kind }: { surveyId: string; kind: IssuableKind },
): Promise<Report> {
  const survey = await loadSurvey(ctx, surveyId);
  authorise(ctx.actor, survey, 'report.preview', 'Drafts are for the survey firm alone.');
  await lockSurvey(ctx, survey.id);
  const of = { surveyId: survey.id, kind };
  const making = await ctx.tx.report.count({
    where: { ...of, preview: true, findingId: null, state: { in: ['queued', 'rendering'] } },
  });
  if (making > 0) throw wrongState('A draft is being made just now. Wait until it is done, then ask again.');
  const last = await ctx.tx.report.aggregate({ where: { ...of, state: 'issued' }, _max: { revision: true } });
  const revision = (last._max.revision ?? 0) + 1;
  const row = await ctx.tx.report.create({
    data: {
      id: newId(),
      firmId: survey.firmId,
      ...of,
      preview: true,
      snapshot: await freezeSnapshot(ctx, { ...of, revision, preview: true }),
      stage: 'Waiting for its turn',
      requestedById: actorId(ctx.actor),
      requestedBy: actorName(ctx.actor),
      createdAt: ctx.clock(),
    },
  });
  await enqueue(ctx.tx, 'report.render', { firmId: survey.firmId, reportId: row.id });
  return presentReport(row, await latestIssued(ctx, survey.id));
}
