import type { FindingItem } from '@garboard/contract/finding-items';
import { type ItemStandings, standingOf } from '@garboard/trade/clearing';

/** One thing to be put right, as a finding keeps it. */
export interface Item {
  id: string;
  text: string;
}

/** The items of a finding as parties know them: those issued, else those being written. */
export function issuedItems({ issued, items }: { issued: unknown; items: unknown }): Item[] {
  const frozen = issued as { items?: Item[] } | null;
  return frozen ? (frozen.items ?? []).map(({ id, text }) => ({ id, text })) : (items as Item[]);
}

/** How a finding's items stand, as its row keeps it. */
export const standingsOf = (row: { itemStates: unknown }): ItemStandings => row.itemStates as ItemStandings;

/** Items with how far each has come. Of a finding that was withdrawn meanwhile none waits for a decision. */
export function presentItems(
  items: readonly Item[],
  standings: ItemStandings,
  findingState: string,
): FindingItem[] {
  return items.map(({ id, text }) => {
    const { state, limit = null, limitUntil = null } = standingOf(standings, id);
    const waits = state !== 'evidence-sent' || findingState === 'evidence-sent';
    return { id, text, state: waits ? state : 'open', limit, limitUntil };
  });
}
