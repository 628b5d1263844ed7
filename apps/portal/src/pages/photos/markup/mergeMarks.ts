import type { Mark } from '@garboard/contract/photos';
import { same } from '../../../app/merge.ts';

const has = (marks: readonly Mark[], mark: Mark) => marks.some((other) => same(other, mark));

/**
 * Two people's marks put together: what either added stands, what either took away is gone. A mark that both changed
 * stands in both ways, for a person to choose.
 */
export function mergeMarks(base: readonly Mark[], mine: readonly Mark[], theirs: readonly Mark[]): Mark[] {
  const kept = theirs.filter((mark) => has(mine, mark) || !has(base, mark));
  return [...kept, ...mine.filter((mark) => !has(base, mark) && !has(kept, mark))];
}
