import type { Finding } from '@garboard/contract/findings';
import { findingStateLabels } from '@garboard/trade/vocabulary';

/** How far a finding has come, in words; of several items also how many are left. */
export function stateWords({
  state,
  items,
  itemsLeft,
}: Pick<Finding, 'state' | 'items' | 'itemsLeft'>): string {
  const words = findingStateLabels[state];
  const some = items.length > 1 && itemsLeft > 0 && itemsLeft < items.length;
  return some ? `${words}, ${itemsLeft} of ${items.length} items left` : words;
}
