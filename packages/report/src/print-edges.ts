import { printEdgeFor } from '@garboard/contract/print-sizes';
import type { ReportSnapshot, SnapshotPhoto } from '@garboard/contract/report-snapshot';
import { leadPhotoSize } from './cover.tsx';
import { pairedPhotos, photoRows } from './photo-layout.ts';

/**
 * For each photo the document shows, the pixels of the longer side that its place on paper asks for: 200 to
 * 300 dots to the inch. One that is shown twice is made for the larger place.
 */
export function printEdges(snapshot: ReportSnapshot): Map<string, number> {
  const edges = new Map<string, number>();
  const place = ({ id }: SnapshotPhoto, width: number, height: number) => {
    const edge = printEdgeFor(Math.max(width, height));
    edges.set(id, Math.max(edge, edges.get(id) ?? 0));
  };
  if ('leadPhoto' in snapshot && snapshot.leadPhoto) {
    const { width, height } = leadPhotoSize(snapshot.leadPhoto, snapshot.paper);
    place(snapshot.leadPhoto, width, height);
  }
  for (const finding of snapshot.findings) {
    for (const { photo, width, height } of photoRows(finding.photos).flat()) place(photo, width, height);
  }
  if ('lookedAgain' in snapshot) {
    for (const { pairs, photos } of snapshot.lookedAgain) {
      const rows = pairs.flatMap(({ before, after }) => pairedPhotos(before, after));
      for (const { photo, width, height } of [...rows, ...photoRows(photos).flat()]) {
        place(photo, width, height);
      }
    }
  }
  return edges;
}
