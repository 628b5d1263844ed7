import type { SnapshotFinding, SnapshotLookedAgain } from '@garboard/contract/report-snapshot';
import { decidedFindingStates } from '@garboard/trade/states';
import type { FindingState } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { refuseFailedPhotos } from './report-obstacles.ts';
import { type FindingRow, freezeIssued, freezePhoto, issuedContents } from './snapshot-rows.ts';

/** Without a recorded visit there is no more to say of each. */
const noVisit = { photos: [], outcome: null, items: [], limit: null, limitUntil: null };

/**
 * The issued findings that were looked at again: those with a later photo paired with one of the report, with
 * other words on what was seen, or with a decision.
 *
 * @throws Refusal `wrong-state` when there is none.
 */
export async function lookedAgain(
  ctx: Ctx,
  { surveyId, findings }: { surveyId: string; findings: readonly FindingRow[] },
): Promise<{ findings: SnapshotFinding[]; lookedAgain: SnapshotLookedAgain[] }> {
  const issued = findings.flatMap((row) => {
    const contents = issuedContents(row);
    return contents ? [{ row, contents }] : [];
  });
  const befores = new Map(issued.flatMap(({ contents }) => contents.photos.map((p) => [p.id, p])));
  const later = await ctx.tx.photo.findMany({
    where: { surveyId, beforePhotoId: { in: [...befores.keys()] } },
    orderBy: { orderKey: 'asc' },
  });
  refuseFailedPhotos(later);
  const again = issued.flatMap(({ row, contents }) => {
    const shown = new Set(contents.photos.map((p) => p.id));
    const pairs = later.flatMap((photo) => {
      const before =
        photo.beforePhotoId && shown.has(photo.beforePhotoId) && befores.get(photo.beforePhotoId);
      return before ? [{ before, after: freezePhoto(photo) }] : [];
    });
    const found = row.observed === contents.observed ? '' : row.observed;
    const decided = decidedFindingStates.includes(row.state as FindingState);
    const seen = { findingId: row.id, found, pairs, ...noVisit };
    return pairs.length > 0 || found || decided ? [{ row, seen }] : [];
  });
  if (again.length === 0) {
    throw wrongState(
      'No finding has been looked at again since the report. Pair a new photo with one of the report, write what was found, or decide on the evidence first.',
    );
  }
  return {
    findings: again.flatMap(({ row }) => freezeIssued(row)).map((f) => ({ ...f, photos: [] })),
    lookedAgain: again.map(({ seen }) => seen),
  };
}
