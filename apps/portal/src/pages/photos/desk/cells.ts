import type { Finding } from '@garboard/contract/findings';
import type { Photo } from '@garboard/contract/photos';

/** Which photos are shown: all of them, those in no finding yet, or those of one finding by its id. */
export type Shown = 'all' | 'none' | (string & {});

/** A place in the grid: a photo, and the group of near-duplicates it opens or belongs to. */
export interface Cell {
  photo: Photo;
  /** Place among all photos of the survey by capture time, from 1; the same under every filter. */
  number: number;
  /** Findings that show it, in the order of the report. */
  findings: Finding[];
  /** Set on the first of a group: how many are alike, this one included. */
  alike: number;
  /** Whether it belongs to a group that is open. */
  opened: boolean;
  /** The group's name: the first photo of it that is shown. */
  group: string | null;
}

/** The findings that show each photo. */
export function findingsByPhoto(findings: readonly Finding[]): Map<string, Finding[]> {
  const by = new Map<string, Finding[]>();
  for (const finding of findings)
    for (const { id } of finding.photos) by.set(id, [...(by.get(id) ?? []), finding]);
  return by;
}

/**
 * What the grid shows: photos in the order they were taken, each group of near-duplicates as its first photo until
 * the group is opened, when its others follow it directly.
 */
export function cellsOf(
  photos: readonly Photo[],
  findings: readonly Finding[],
  shown: Shown,
  open: ReadonlySet<string>,
): Cell[] {
  const by = findingsByPhoto(findings);
  const cells: Cell[] = [];
  const groups = new Map<string, Cell[]>();
  for (const [at, photo] of photos.entries()) {
    const used = by.get(photo.id) ?? [];
    if (shown === 'none' && used.length) continue;
    if (shown !== 'none' && shown !== 'all' && !used.some((finding) => finding.id === shown)) continue;
    const cell = { photo, number: at + 1, findings: used, alike: 1, opened: false, group: photo.likeness };
    const group = photo.likeness ? groups.get(photo.likeness) : undefined;
    if (group) group.push(cell);
    else cells.push(cell);
    if (photo.likeness && !group) groups.set(photo.likeness, [cell]);
  }
  return cells.flatMap((cell) => {
    const group = cell.group ? (groups.get(cell.group) ?? []) : [];
    if (group.length < 2) return [cell];
    const opened = open.has(cell.group ?? '');
    const first = { ...cell, alike: group.length, opened };
    return opened ? [first, ...group.slice(1).map((other) => ({ ...other, opened }))] : [first];
  });
}

/** How many photos stand behind each choice of the filter. */
export function countsOf(photos: readonly Photo[], findings: readonly Finding[]) {
  const by = findingsByPhoto(findings);
  return { all: photos.length, none: photos.filter((photo) => !by.has(photo.id)).length };
}
