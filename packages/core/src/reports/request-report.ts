import type { Report } from '@garboard/contract/reports';
import { newId } from '@garboard/db/ids';
import { reportKindLabels } from '@garboard/trade/vocabulary';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { wrongState } from '../problems.ts';
import { refuseUnreviewed } from '../reviews/refuse-unreviewed.ts';
import { refuseUnsignable } from '../signing/signer.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';
import { freezeSnapshot, type IssuableKind, photosOf } from './freeze-snapshot.ts';
import { dropPictures } from './keep-pictures.ts';
import { newVerification } from './new-verification.ts';
import { latestIssued, presentReport } from './present-report.ts';
import { requestPreview } from './request-preview.ts';

export interface RequestReport {
  surveyId: string;
  kind: IssuableKind;
  /** Only to be looked at. */
  preview?: boolean;
  /** Address of the installation, under which the document can be verified; without a slash at the end. */
  publicUrl: string;
}

/**
 * Asks for a report or letter: freezes what it will say and hands the rendering to the worker.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` saying what has to be done first.
 */
export async function requestReport(ctx: Ctx, input: RequestReport): Promise<Report> {
  const { surveyId, kind, publicUrl } = input;
  if (input.preview) return requestPreview(ctx, { surveyId, kind });
  const survey = await loadSurvey(ctx, surveyId);
  const role = authorise(
    ctx.actor,
    survey,
    'report.issue',
    'Reports and letters are issued by a surveyor or principal of the survey firm.',
  );
  await refuseUnsignable(ctx, survey.firmId);
  await lockSurvey(ctx, survey.id);
  const revision = await nextRevision(ctx, survey.id, kind);
  const verification = newVerification(publicUrl);
  const snapshot = await freezeSnapshot(ctx, { surveyId: survey.id, kind, revision, verification });
  if (snapshot.kind === 'full') await refuseUnreviewed(ctx, survey, snapshot);
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
      ...(snapshot.changes ? { changes: snapshot.changes } : {}),
      verificationCode: verification.code,
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

/**
 * The number after the last one issued. One that failed gives its number up, so that none is missing.
 *
 * @throws Refusal `wrong-state` while one of this kind is being made.
 */
async function nextRevision(ctx: Ctx, surveyId: string, kind: IssuableKind): Promise<number> {
  const numbered = { surveyId, kind, revision: { not: null } };
  const last = await ctx.tx.report.findFirst({
    where: numbered,
    orderBy: { revision: 'desc' },
    select: { revision: true, state: true },
  });
  if (last && (last.state === 'queued' || last.state === 'rendering')) {
    throw wrongState(
      `Revision ${last.revision} of this document is being made just now. Wait until it is done, then ask again.`,
    );
  }
  if (last?.state !== 'failed') return (last?.revision ?? 0) + 1;
  const failed = { ...numbered, state: 'failed' };
  await dropPictures(ctx, { report: failed });
  await ctx.tx.report.updateMany({ where: failed, data: { revision: null } });
  return last.revision ?? 1;
}
