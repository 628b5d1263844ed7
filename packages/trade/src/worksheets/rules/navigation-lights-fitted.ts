import { settle } from '../core/units.ts';
import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import {
  arcs,
  hiddenAllowed,
  intensityRequired,
  type Light,
  lightNames,
  rangeRequired,
  type Situation,
  type Way,
} from './navigation-lights-rules.ts';

type Answer = 'yes' | 'no' | 'not-examined';

/** A light found on board. Range in nautical miles, intensity in candela, arc in degrees, where known. */
export interface FittedLight {
  light: Light;
  range?: number;
  intensity?: number;
  arc?: number;
  lights: Answer;
  unobstructed: Answer;
}

/** How a light that is wanted stands: `unknown` where something wasn't examined. */
export interface LightState {
  light: Light;
  state: 'good' | 'unknown' | 'short' | 'arc' | 'dark' | 'missing';
  /** In words, to stand after the light's name. */
  words: string;
}

const nmi = (value: number) => `${formatNumber(value, 3)} nmi`;

function reachProblem(fitted: FittedLight, length: number): string | undefined {
  const wanted = rangeRequired(fitted.light, length);
  if (fitted.range !== undefined && settle(fitted.range) < wanted)
    return `reaches ${nmi(fitted.range)}; ${nmi(wanted)} is required`;
  const candela = intensityRequired(wanted);
  if (fitted.intensity !== undefined && settle(fitted.intensity) < candela)
    return `gives ${formatNumber(fitted.intensity, 3)} cd; ${formatNumber(candela, 3)} cd is required for ${nmi(wanted)}`;
  return undefined;
}

function arcProblem({ light, arc, unobstructed }: FittedLight): string | undefined {
  if (light === 'torch') return undefined;
  const { degrees, spare } = arcs[light];
  if (arc !== undefined) {
    const least = degrees === 360 ? 360 - hiddenAllowed : degrees;
    if (settle(arc) < least) return `shows over ${formatNumber(arc, 4)}° of ${degrees}°`;
    if (settle(arc) > degrees + spare)
      return `shows over ${formatNumber(arc, 4)}°, beyond its ${degrees}° and the ${spare}° in which it must fade`;
    return undefined;
  }
  return unobstructed === 'no' ? `does not show over the whole of its ${degrees}°` : undefined;
}

/** Judges one fitted light against what its kind needs on a vessel of a length in metres. */
export function stateOf(fitted: FittedLight, length: number): LightState {
  const { light } = fitted;
  if (fitted.lights === 'no') return { light, state: 'dark', words: 'does not light' };
  const hidden = arcProblem(fitted);
  if (hidden) return { light, state: 'arc', words: hidden };
  const short = light === 'torch' ? undefined : reachProblem(fitted, length);
  if (short) return { light, state: 'short', words: short };
  const open = [
    ...(fitted.lights === 'not-examined' ? ['whether it lights'] : []),
    ...(light !== 'torch' && fitted.arc === undefined && fitted.unobstructed === 'not-examined'
      ? ['its arc']
      : []),
    ...(light !== 'torch' && fitted.range === undefined && fitted.intensity === undefined
      ? ['its range']
      : []),
  ];
  if (open.length > 0)
    return { light, state: 'unknown', words: `was not fully examined (${open.join(', ')})` };
  return { light, state: 'good', words: 'in order' };
}

const rank: LightState['state'][] = ['good', 'unknown', 'short', 'arc', 'dark', 'missing'];
const badness = ({ state }: LightState): number => (state === 'good' ? 0 : state === 'unknown' ? 1 : 100);

/** The states of the lights that one way takes, each from the best light of its kind not used already. */
function wayStates(way: Way, fitted: readonly FittedLight[], length: number): LightState[] {
  const used = new Set<number>();
  return way.lights.map((light) => {
    let best = -1;
    let found: LightState = { light, state: 'missing', words: 'missing' };
    for (const [index, candidate] of fitted.entries()) {
      if (candidate.light !== light || used.has(index)) continue;
      const state = stateOf(candidate, length);
      if (rank.indexOf(state.state) >= rank.indexOf(found.state)) continue;
      best = index;
      found = state;
    }
    if (best >= 0) used.add(best);
    return found;
  });
}

export interface Compliance {
  situation: Situation;
  way: Way;
  states: LightState[];
}

/** For each situation the way that the fitted lights come nearest to. */
export function comply(
  wanted: readonly Situation[],
  fitted: readonly FittedLight[],
  length: number,
): Compliance[] {
  return wanted.map((situation) => {
    const tried = situation.ways.map((way) => ({ situation, way, states: wayStates(way, fitted, length) }));
    const score = ({ states }: Compliance) => states.reduce((sum, state) => sum + badness(state), 0);
    return tried.reduce((best, next) => (score(next) < score(best) ? next : best));
  });
}

const gravity: Record<LightState['state'], Judgement['verdict']> = {
  good: 'satisfactory',
  unknown: 'indeterminate',
  short: 'unsatisfactory',
  arc: 'unsatisfactory',
  dark: 'unsatisfactory',
  missing: 'unsatisfactory',
};

/** What is said of a missing light: its kind, and what may stand in its place. */
function missingWords({ key, title }: Situation, light: Light): string {
  if (light === 'combined')
    return `${title}: the sidelights are missing, two of them or both in one lantern.`;
  if (light === 'all-round' && key === 'power')
    return `${title}: the white light is missing: an all-round light, or a masthead light and a sternlight.`;
  return `${title}: the ${lightNames[light]} is missing.`;
}

function judgeLight({ situation }: Compliance, { light, state, words }: LightState): Judgement {
  const { title, waived, key } = situation;
  const sentence =
    state === 'missing' ? missingWords(situation, light) : `${title}: the ${lightNames[light]} ${words}.`;
  if (waived && gravity[state] === 'unsatisfactory')
    return { verdict: 'attention', reason: `${sentence} ${waived}` };
  if (key === 'anchor' && state === 'arc')
    return {
      verdict: 'attention',
      reason: `${sentence} An anchor light need not stand impracticably high to clear the mast.`,
    };
  return { verdict: gravity[state], reason: sentence };
}

/** Judgements of one situation: a sentence for each light that isn't in order, or one that all are. */
export function judgeSituation(compliance: Compliance): Judgement[] {
  const { situation, way, states } = compliance;
  const wrong = states.filter(({ state }) => state !== 'good');
  if (wrong.length > 0) return wrong.map((state) => judgeLight(compliance, state));
  const names = way.lights.map((light) => lightNames[light]).join(', ');
  return [
    {
      verdict: way.remark ? 'attention' : 'satisfactory',
      reason: `${situation.title}: complete and in order (${names}).${way.remark ? ` ${way.remark}` : ''}`,
    },
  ];
}
