import type { Report } from '@garboard/contract/reports';
import { newId } from '@garboard/db/ids';
import { reportKindLabels } from '@garboard/trade/vocabulary';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { wrongState } from '../problems.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { freezeSnapshot, type IssuableKind, photosOf } from './freeze-snapshot.ts';
import { latestIssued, presentReport } from './present-report.ts';

export interface RequestReport {
  surveyId: string;
  kind: IssuableKind;
}

/**
 * Asks for a report or letter: freezes what it will say and hands the rendering to the worker.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` saying what has to be done first.
 */
export async function requestReport(ctx: Ctx, { surveyId, kind }: RequestReport): Promise<Report> {
  const survey = await loadSurvey(ctx, surveyId);
  const role = authorise(
    ctx.actor,
    survey,
    'report.issue',
    'Reports and letters are issued by a surveyor or principal of the survey firm.',
  );
  await lockSurvey(ctx, survey.id);
  const revision = await nextRevision(ctx, survey.id, kind);
  const snapshot = await freezeSnapshot(ctx, { surveyId: survey.id, kind, revision });
  const { firmId } = survey;
  const id = newId();
  const row = await ctx.tx.report.create({
    data: {
      id,
      firmId,
      surveyId: survey.id,
      kind,
      revision,
      snapshot,
      stage: 'Waiting for its turn',
      requestedById: actorId(ctx.actor),
      requestedBy: actorName(ctx.actor),
      createdAt: ctx.clock(),
    },
  });
  await ctx.tx.reportPhoto.createMany({
    data: photosOf(snapshot).map((photoId) => ({ firmId, reportId: id, photoId })),
  });
  await recordEvent(ctx, {
    firmId,
    surveyId: survey.id,
    reportId: id,
    kind: 'report.requested',
    role,
    data: { label: reportKindLabels[kind], revision },
  });
  await enqueue(ctx.tx, 'report.render', { firmId, reportId: id });
  return presentReport(row, await latestIssued(ctx, survey.id));
}

/** @throws Refusal `wrong-state` while one of this kind is being made. */
async function nextRevision(ctx: Ctx, surveyId: string, kind: IssuableKind): Promise<number> {
  const last = await ctx.tx.report.findFirst({
    where: { surveyId, kind },
    orderBy: { revision: 'desc' },
    select: { revision: true, state: true },
  });
  if (last && (last.state === 'queued' || last.state === 'rendering')) {
    throw wrongState(
      `Revision ${last.revision} of this document is being made just now. Wait until it is done, then ask again.`,
    );
  }
  return (last?.revision ?? 0) + 1;
}
