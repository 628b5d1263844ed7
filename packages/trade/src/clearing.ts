import type { ClearanceState, Decision, FindingState } from './vocabulary.ts';

/** How far one of a finding's items has come; the words of a finding's own state. */
export type ItemState = 'open' | 'evidence-sent' | 'returned' | 'cleared' | 'accepted-as-is';

/** An item's state, and within what it was accepted as it is. */
export interface ItemStanding {
  state: ItemState;
  limit?: string | null;
  limitUntil?: string | null;
}

/** By the item's id; an open item needs no entry. */
export type ItemStandings = Readonly<Record<string, ItemStanding>>;

const nothingYet: ItemStanding = { state: 'open' };
export const standingOf = (standings: ItemStandings, itemId: string): ItemStanding =>
  standings[itemId] ?? nothingYet;

/** Whether somebody has decided that nothing more is asked of it. */
export const isSettled = ({ state }: ItemStanding): boolean =>
  state === 'cleared' || state === 'accepted-as-is';

/** The items that nobody has decided on yet, in their order. */
export const itemsLeft = (itemIds: readonly string[], standings: ItemStandings): string[] =>
  itemIds.filter((itemId) => !isSettled(standingOf(standings, itemId)));

const afterItem: Record<Decision, ItemState> = {
  accept: 'cleared',
  return: 'returned',
  'accept-as-is': 'accepted-as-is',
};

export interface ItemDecision {
  itemId: string;
  decision: Decision;
  limit: string | null;
  limitUntil: string | null;
}

/** How the items stand once these decisions are taken. */
export function afterItemDecisions(
  standings: ItemStandings,
  decisions: readonly ItemDecision[],
): ItemStandings {
  const entries = decisions.map(({ itemId, decision, limit, limitUntil }) => {
    const state = afterItem[decision];
    return [itemId, decision === 'accept-as-is' ? { state, limit, limitUntil } : { state }] as const;
  });
  return { ...standings, ...Object.fromEntries(entries) };
}

/** What a finding of several items is, by how they stand: decided only when all of them are. */
export function findingStateOf(itemIds: readonly string[], standings: ItemStandings): FindingState {
  const states = itemIds.map((itemId) => standingOf(standings, itemId).state);
  if (states.includes('evidence-sent')) return 'evidence-sent';
  if (states.includes('returned')) return 'returned';
  if (states.includes('open')) return 'open';
  return states.includes('accepted-as-is') ? 'accepted-as-is' : 'cleared';
}

/** What decisions on its items make of the evidence. */
export function clearanceStateOf(decisions: readonly Decision[]): ClearanceState {
  if (decisions.every((d) => d === 'return')) return 'returned';
  if (decisions.includes('return')) return 'part-accepted';
  return decisions.includes('accept-as-is') ? 'accepted-as-is' : 'accepted';
}
