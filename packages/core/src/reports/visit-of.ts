import type {
  AddendumSnapshot,
  SnapshotFinding,
  SnapshotLookedAgain,
  SnapshotPhoto,
} from '@garboard/contract/report-snapshot';
import type { Outcome } from '@garboard/trade/re-inspection';
import type { AttendanceCondition } from '@garboard/trade/vocabulary';
import { issuedItems } from '../clearance/items.ts';
import type { Ctx } from '../context.ts';
import { refuseFailedPhotos } from './report-obstacles.ts';
import { type FindingRow, freezeIssued, freezePhoto, issuedContents } from './snapshot-rows.ts';

/** What an addendum tells of the latest recorded visit: each thing looked at, in the order of the visit. */
export interface FrozenVisit {
  findings: SnapshotFinding[];
  lookedAgain: SnapshotLookedAgain[];
  visit: AddendumSnapshot['visit'];
}

/** The latest visit after the report, with its photos; null when none was recorded. */
export async function visitOf(
  ctx: Ctx,
  { surveyId, findings }: { surveyId: string; findings: readonly FindingRow[] },
): Promise<FrozenVisit | null> {
  const visit = await ctx.tx.reInspection.findFirst({
    where: { surveyId },
    orderBy: { id: 'desc' },
    include: { items: { orderBy: { ordinal: 'asc' } } },
  });
  if (!visit) return null;
  const rows = new Map(findings.map((row) => [row.id, row]));
  const ids = [...new Set(visit.items.flatMap((item) => item.photoIds))];
  const photos = await ctx.tx.photo.findMany({ where: { surveyId, id: { in: ids } } });
  refuseFailedPhotos(photos);
  const byId = new Map(photos.map((photo) => [photo.id, photo]));
  const lookedAgain = visit.items.flatMap((item) => {
    const row = rows.get(item.findingId);
    if (!row) return [];
    const befores = new Map((issuedContents(row)?.photos ?? []).map((photo) => [photo.id, photo]));
    const pairs: SnapshotLookedAgain['pairs'] = [];
    const others: SnapshotPhoto[] = [];
    for (const photo of item.photoIds.flatMap((id) => byId.get(id) ?? [])) {
      const before = photo.beforePhotoId ? befores.get(photo.beforePhotoId) : undefined;
      if (before) pairs.push({ before, after: freezePhoto(photo) });
      else others.push(freezePhoto(photo));
    }
    const named = issuedItems(row).filter(({ id }) => item.itemIds.includes(id));
    return [
      {
        findingId: item.findingId,
        found: item.note,
        pairs,
        photos: others,
        outcome: item.outcome as Outcome,
        items: named.map(({ text }) => text),
        limit: item.limit,
        limitUntil: item.limitUntil?.toISOString().slice(0, 10) ?? null,
      },
    ];
  });
  const seen = new Set(lookedAgain.map((again) => again.findingId));
  const { place, note, byName } = visit;
  return {
    findings: findings
      .filter((row) => seen.has(row.id))
      .flatMap(freezeIssued)
      .map((finding) => ({ ...finding, photos: [] })),
    lookedAgain,
    visit: {
      date: visit.date.toISOString().slice(0, 10),
      ...{ place, note, by: byName },
      condition: visit.condition as AttendanceCondition,
    },
  };
}
