import { type Purpose, type System, systems } from './vocabulary.ts';

/** How far a system was reached, as a person reads it. */
export const reachLabels = {
  examined: 'Examined',
  partly: 'Examined in part',
  'not-reached': 'Not reached',
  'not-fitted': 'Not fitted',
} as const;
export type Reached = keyof typeof reachLabels;
export const reaches = Object.keys(reachLabels) as [Reached, ...Reached[]];

/** Whether an answer says nothing to its reader without a reason. */
export const reachNeedsReason = (reached: Reached | null): boolean =>
  reached === 'partly' || reached === 'not-reached';

/** The sentence for an answer without its reason. */
export const reasonMissing =
  'Say why it was not reached, or not wholly: the reader relies on what was not seen.';

const everything: readonly System[] = systems;
const without = (...left: System[]): readonly System[] => systems.filter((s) => !left.includes(s));

/**
 * The systems on which a survey of each purpose says how far they were reached. Common practice, no source: a buyer
 * and an owner asking for the condition are told of everything; an insurer of what can sink, burn or disable a boat;
 * a valuation rests on structure, machinery and equipment at large. Damage spreads beyond what is seen at first, so
 * that its survey always answers for the shell, the deck, its openings and the bilge; a re-inspection answers only
 * for what it looks at again.
 */
const asked: Record<Purpose, readonly System[]> = {
  'pre-purchase': everything,
  condition: everything,
  insurance: without('accommodation', 'electronics'),
  valuation: without('through-hulls', 'exhaust', 'corrosion-protection', 'navigation-lights', 'access'),
  damage: ['hull', 'deck', 'through-hulls', 'bilge'],
  're-inspection': [],
};

/**
 * The systems that a survey has to answer for before its report is issued, in their usual order: those its purpose
 * asks for, and every system of which it reports a finding.
 */
export function systemsAsked(purpose: Purpose, withFindings: Iterable<System> = []): System[] {
  const all = new Set([...asked[purpose], ...withFindings]);
  return systems.filter((system) => all.has(system));
}
