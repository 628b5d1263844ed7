import { newId } from '@garboard/db/ids';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import type { ServedFile } from '../files/served-file.ts';
import { loadFinding } from '../findings/load-finding.ts';
import { wrongState } from '../problems.ts';
import { freezeRecord } from './freeze-snapshot.ts';
import { removePreviews } from './sweep-previews.ts';

/** A preview of one finding that was asked for: the row that a worker is to print. */
export interface FindingPreview {
  firmId: string;
  reportId: string;
}

/**
 * Freezes one finding as the report would print it, in place of the preview of it made before. Handing it to a
 * worker, once this is committed, is the caller's part.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` for one that was withdrawn.
 */
export async function requestFindingPreview(ctx: Ctx, findingId: string): Promise<FindingPreview> {
  const finding = await loadFinding(ctx, findingId);
  authorise(ctx.actor, finding.survey, 'finding.preview', 'Drafts are for the survey firm alone.');
  if (finding.state === 'withdrawn') {
    throw wrongState('This finding is withdrawn; no further revision prints it.');
  }
  const { firmId, surveyId } = finding;
  await removePreviews(ctx.tx, { findingId });
  const reportId = newId();
  await ctx.tx.report.create({
    data: {
      ...{ id: reportId, firmId, surveyId, findingId, kind: 'full', preview: true },
      snapshot: await freezeRecord(ctx, surveyId, findingId),
      ...{ requestedById: actorId(ctx.actor), requestedBy: actorName(ctx.actor), createdAt: ctx.clock() },
    },
  });
  return { firmId, reportId };
}

/** The file of such a preview; null while it is being made. @throws Refusal `wrong-state` when it could not be made */
export async function findingPreviewFile(ctx: Ctx, reportId: string): Promise<ServedFile | null> {
  const row = await ctx.tx.report.findUnique({
    where: { id: reportId },
    select: { state: true, sha256: true, problem: true },
  });
  // Somebody else has asked for a newer one.
  if (!row) throw wrongState('The finding was changed or looked at again meanwhile. Ask once more.');
  if (row.state === 'failed') throw wrongState(row.problem ?? 'The preview could not be made.');
  if (row.state !== 'ready' || row.sha256 === null) return null;
  const file = { sha256: row.sha256, mediaType: 'application/pdf', fileName: 'finding DRAFT.pdf' };
  return { ...file, immutable: false, download: false };
}
