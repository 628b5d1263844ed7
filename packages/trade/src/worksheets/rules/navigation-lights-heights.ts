import { settle } from '../core/units.ts';
import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import type { RuleSet } from './navigation-lights-rules.ts';

/** What is known of a power-driven vessel's lights and their places; metres. */
export interface Places {
  length: number;
  breadth?: number;
  rules: RuleSet;
  combined: boolean;
  twoMastheads: boolean;
  mastheadHeight?: number;
  mastheadAboveSidelights?: number;
  afterMastheadAbove?: number;
  mastheadSpacing?: number;
  mastheadFromStem?: number;
}

/** One measured place and its limit in metres. */
export interface PlaceRule {
  what: string;
  least?: number;
  most?: number;
  found?: number;
}

/**
 * Least height in metres of the forward or only masthead light above the uppermost continuous deck, vessels of 20 m
 * and over: 6 m or the breadth, at most 12 (Annex I section 2(a)); inland 5, 8 (33 CFR 84.02(a)).
 */
export const mastheadHeightNeeded = (breadth: number, rules: RuleSet): number =>
  rules === 'international' ? Math.min(12, Math.max(6, breadth)) : Math.min(8, Math.max(5, breadth));

/** Least distance in metres along the vessel between two prescribed masthead lights. */
export const mastheadSpacingNeeded = (length: number, rules: RuleSet): number =>
  rules === 'international' ? Math.min(100, length / 2) : Math.min(50, length / 4);

const given = (what: string, limit: { least?: number; most?: number }, found?: number): PlaceRule => ({
  what,
  ...limit,
  ...(found === undefined ? {} : { found }),
});

function sidelightRules(p: Places): PlaceRule[] {
  const above = 'Masthead or all-round light above the sidelights';
  if (p.length < 12 || p.rules === 'inland' || (p.length < 20 && p.combined))
    return [given(above, { least: 1 }, p.mastheadAboveSidelights)];
  // Sidelights at no more than three quarters of the masthead light's height: a quarter of it lies between them.
  if (p.length >= 20 && p.mastheadHeight !== undefined)
    return [
      given(
        'Masthead light above the sidelights, a quarter of its height',
        { least: p.mastheadHeight / 4 },
        p.mastheadAboveSidelights,
      ),
    ];
  return [];
}

/** The rules of Annex I (33 CFR 84.02, 84.03) on where a power-driven vessel's masthead lights and sidelights stand. */
export function placeRules(p: Places): PlaceRule[] {
  const rules: PlaceRule[] = [];
  if (p.length >= 20) {
    const least = mastheadHeightNeeded(p.breadth ?? 0, p.rules);
    rules.push(given('Masthead light above the deck', { least }, p.mastheadHeight));
  } else if (p.length >= 12) {
    rules.push(given('Masthead light above the gunwale', { least: 2.5 }, p.mastheadHeight));
  }
  rules.push(...sidelightRules(p));
  if (p.twoMastheads) {
    const least = p.rules === 'international' ? 4.5 : 2;
    rules.push(given('After masthead light above the forward one', { least }, p.afterMastheadAbove));
  }
  if (p.length >= 50) {
    const international = p.rules === 'international';
    rules.push(
      given(
        'Distance between the masthead lights',
        { least: mastheadSpacingNeeded(p.length, p.rules) },
        p.mastheadSpacing,
      ),
      given(
        'Forward masthead light from the stem',
        { most: international ? p.length / 4 : p.length / 2 },
        p.mastheadFromStem,
      ),
    );
  }
  return rules;
}

const metres = (value: number) => `${formatNumber(value, 3)} m`;
export const limitWords = ({ least, most }: PlaceRule): string =>
  least === undefined ? `at most ${metres(most ?? 0)}` : `at least ${metres(least)}`;

/** Whether a measured place keeps its limit; nothing where it wasn't measured. */
export function keeps({ least, most, found }: PlaceRule): boolean | undefined {
  if (found === undefined) return undefined;
  const at = settle(found);
  return (least === undefined || at >= settle(least)) && (most === undefined || at <= settle(most));
}

/** A sentence for each place that breaks its limit, one for those not measured, one when all are kept. */
export function judgePlaces(rules: readonly PlaceRule[]): Judgement[] {
  const wrong = rules.filter((rule) => keeps(rule) === false);
  const open = rules.filter((rule) => rule.found === undefined);
  const judgements = wrong.map(
    (rule): Judgement => ({
      verdict: 'unsatisfactory',
      reason: `${rule.what}: ${metres(rule.found ?? 0)}; ${limitWords(rule)} is required.`,
    }),
  );
  if (open.length > 0) {
    const list = open.map((rule) => `${rule.what.toLowerCase()} (${limitWords(rule)})`).join('; ');
    judgements.push({ verdict: 'attention', reason: `Not measured: ${list}.` });
  }
  if (wrong.length === 0 && open.length < rules.length) {
    judgements.push({ verdict: 'satisfactory', reason: 'The places measured keep their limits.' });
  }
  return judgements;
}
