import type { Clearance } from '@garboard/contract/clearances';
import type { Decision } from '@garboard/trade/vocabulary';
import type { CallArgs } from '../../../api/client.ts';
import { Incomplete } from '../../../api/problems.ts';

/** What is being decided on the evidence as a whole, or on one of its items. */
export interface Deciding {
  decision: Decision | '';
  reason: string;
  limit: string;
  limitUntil: string;
}

export interface DecisionDraft {
  whole: Deciding;
  /** Decided one by one. */
  apart: boolean;
  items: Record<string, Deciding>;
}

export const undecided: Deciding = { decision: '', reason: '', limit: '', limitUntil: '' };

type Body = CallArgs<'decideClearance'>['body'];

function bodyOfOne({ decision, reason, limit, limitUntil }: Deciding) {
  if (!decision) throw new Incomplete('Choose what you decide.');
  const limited = decision === 'accept-as-is';
  return {
    decision,
    reason,
    limit: limited ? limit : '',
    limitUntil: limited && limitUntil ? limitUntil : null,
  };
}

/** The decision as the API wants it. @throws Incomplete while something isn't decided */
export function bodyOf(draft: DecisionDraft, clearance: Clearance): Body {
  if (!draft.apart) return bodyOfOne(draft.whole);
  return {
    items: clearance.items.map(({ itemId, text }) => {
      const one = draft.items[itemId] ?? undecided;
      if (!one.decision) throw new Incomplete(`Decide also on “${text}”.`);
      return { itemId, ...bodyOfOne(one) };
    }),
  };
}
