import type { CoveredItem, decisionBody } from '@garboard/contract/clearances';
import {
  afterItemDecisions,
  clearanceStateOf,
  findingStateOf,
  type ItemStandings,
  itemsLeft,
  standingOf,
} from '@garboard/trade/clearing';
import { afterDecision } from '@garboard/trade/states';
import type { ClearanceState, Decision, FindingState } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { invalidField } from '../problems.ts';
import { covering } from './evidence-parts.ts';
import { type Item, issuedItems, standingsOf } from './items.ts';

export type DecisionBody = z.output<typeof decisionBody>;

/** What a decision makes of evidence, of its finding and of the finding's items. */
export interface Outcome {
  clearance: ClearanceState;
  finding: FindingState;
  /** The one decision, or null when items were decided apart. */
  decision: Decision | null;
  items: CoveredItem[];
  standings: ItemStandings;
  /** Within what this decision accepts it as it is; of several items their limits together. */
  limit: string | null;
  limitUntil: string | null;
  /** The finding's limit, none unless that is its state; and the first day on which one of its items' limits ends. */
  accepted: { limit: string | null; until: string | null };
}

interface ItsFinding {
  issued: unknown;
  items: unknown;
  itemStates: unknown;
}

/**
 * Works out what a decision leads to; writes nothing. Items that an issue meanwhile took out are left alone; evidence
 * for a finding that had no items yet counts for all that are left.
 *
 * @throws Refusal `invalid-input` when decisions don't fit the items
 */
export function outcomeOf(finding: ItsFinding, evidence: { items: unknown }, body: DecisionBody): Outcome {
  const items = issuedItems(finding);
  const standings = standingsOf(finding);
  const covered = stillCovered(items, standings, evidence.items as CoveredItem[]);
  const decided = covered.map((item) => ({ ...item, ...decisionFor(item, body, covered) }));
  const limited = decided.filter((d) => d.decision === 'accept-as-is');
  const one = body.decision ?? onlyOne(decided.map((d) => d.decision));
  const whole = {
    decision: one,
    limit: limited.map((d) => `${d.text}: ${d.limit}`).join('; ') || body.limit || null,
    limitUntil: earliest(limited.map((d) => d.limitUntil)) ?? body.limitUntil,
    items: decided,
  };
  if (items.length === 0 || decided.length === 0) {
    if (!body.decision)
      throw invalidField('/items', 'This evidence is for the finding as a whole; give one decision.');
    const left = itemsLeft(
      items.map((item) => item.id),
      standings,
    );
    const after = afterDecision[body.decision];
    const asIs = left.length === 0 && after.finding === 'accepted-as-is';
    return {
      ...whole,
      clearance: after.clearance,
      finding: left.length > 0 ? 'open' : after.finding,
      standings,
      accepted: asIs ? { limit: whole.limit, until: whole.limitUntil } : noLimit,
    };
  }
  const after = afterItemDecisions(standings, decided);
  const ids = items.map((item) => item.id);
  const state = findingStateOf(ids, after);
  return {
    ...whole,
    clearance: clearanceStateOf(decided.map((d) => d.decision)),
    finding: state,
    standings: after,
    accepted: { ...limitsOf(items, after), ...(state === 'accepted-as-is' ? {} : { limit: null }) },
  };
}

const noLimit = { limit: null, until: null };

/** The limits of all items that were accepted as they are, and the first day on which one of them ends. */
export function limitsOf(items: readonly Item[], standings: ItemStandings): Outcome['accepted'] {
  const asIs = items.flatMap(({ id, text }) => {
    const { state, limit = null, limitUntil = null } = standingOf(standings, id);
    return state === 'accepted-as-is' ? [{ text, limit, limitUntil }] : [];
  });
  return {
    limit: asIs.map(({ text, limit }) => `${text}: ${limit}`).join('; ') || null,
    until: earliest(asIs.map((item) => item.limitUntil)),
  };
}

/** The items that evidence is about and that the finding still asks for. */
function stillCovered(
  items: readonly Item[],
  standings: ItemStandings,
  sent: readonly CoveredItem[],
): CoveredItem[] {
  const left = itemsLeft(
    items.map((item) => item.id),
    standings,
  );
  if (sent.length === 0) return covering(items, left);
  return sent.filter((item) => left.includes(item.itemId));
}

function decisionFor({ itemId, text }: CoveredItem, body: DecisionBody, covered: readonly CoveredItem[]) {
  const stranger = body.items?.find((d) => !covered.some((item) => item.itemId === d.itemId));
  if (stranger)
    throw invalidField('/items', 'An item is decided on that this evidence doesn’t cover. Load it again.');
  const own = body.items ? body.items.find((d) => d.itemId === itemId) : body;
  if (!own?.decision) throw invalidField('/items', `Say what is decided on “${text}” too.`);
  const { decision, reason, limit, limitUntil } = own;
  return { decision, reason: reason || null, limit: limit || null, limitUntil };
}

const onlyOne = (decisions: readonly Decision[]): Decision | null =>
  decisions[0] && decisions.every((d) => d === decisions[0]) ? decisions[0] : null;

const earliest = (days: readonly (string | null)[]): string | null =>
  days.filter((day) => day !== null).sort()[0] ?? null;
