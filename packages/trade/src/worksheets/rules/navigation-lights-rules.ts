import { settle } from '../core/units.ts';

/** Lights that can be fitted, by what they are called in the Rules. */
export const lightLabels = {
  masthead: 'Masthead light, white, facing forward',
  'after-masthead': 'After masthead light, white, facing forward',
  port: 'Port sidelight, red',
  starboard: 'Starboard sidelight, green',
  combined: 'Sidelights in one lantern, red and green',
  stern: 'Sternlight, white',
  'sailing-lantern': 'Sailing lantern at the masthead: red, green and white in one',
  'all-round': 'All-round white light',
  torch: 'Electric torch or lantern, ready at hand',
} as const;
export type Light = keyof typeof lightLabels;

export const lightNames: Record<Light, string> = {
  masthead: 'masthead light',
  'after-masthead': 'after masthead light',
  port: 'port sidelight',
  starboard: 'starboard sidelight',
  combined: 'lantern of both sidelights',
  stern: 'sternlight',
  'sailing-lantern': 'combined sailing lantern',
  'all-round': 'all-round white light',
  torch: 'torch or lantern',
};

/** Arc of the horizon in degrees (Rule 21), and how much more may be seen before a light misleads (Annex I, section 9). */
export const arcs: Record<Exclude<Light, 'torch'>, { degrees: number; spare: number }> = {
  masthead: { degrees: 225, spare: 10 },
  'after-masthead': { degrees: 225, spare: 10 },
  port: { degrees: 112.5, spare: 8 },
  starboard: { degrees: 112.5, spare: 8 },
  combined: { degrees: 225, spare: 10 },
  stern: { degrees: 135, spare: 10 },
  'sailing-lantern': { degrees: 360, spare: 0 },
  'all-round': { degrees: 360, spare: 0 },
};

/** An all-round light may be hidden over this many degrees by a mast or the like, Annex I section 9(b). */
export const hiddenAllowed = 6;

/** Least range in nautical miles by Rule 22, for a length in metres. The sailing lantern is taken by its white sector. */
export function rangeRequired(light: Light, length: number): number {
  if (light === 'torch') return 0;
  if (light === 'masthead' || light === 'after-masthead')
    return length >= 50 ? 6 : length >= 20 ? 5 : length >= 12 ? 3 : 2;
  if (length >= 50) return 3;
  if (light === 'port' || light === 'starboard' || light === 'combined') return length >= 12 ? 2 : 1;
  return 2;
}

const threshold = 2e-7;
const transmissivity = 0.8;

/** Luminous intensity in candela seen at a range in nautical miles: `3.43·10⁶ T D² K⁻ᴰ`, Annex I section 8. */
export const intensityFor = (range: number): number =>
  3.43e6 * threshold * range ** 2 * transmissivity ** -range;

/** Range in nautical miles at which an intensity in candela is seen; the formula above solved for D by halving. */
export function rangeOf(intensity: number): number {
  let low = 0;
  let high = 40;
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (intensityFor(middle) < intensity) low = middle;
    else high = middle;
  }
  return settle((low + high) / 2);
}

/** Candela by whole nautical miles as printed in Table 84.14(b) of 33 CFR and Annex I section 8. */
const printedIntensity = [0, 0.9, 4.3, 12, 27, 52, 94] as const;

/** Least intensity in candela for a range of 1 to 6 nautical miles, as printed. */
export const intensityRequired = (range: number): number => printedIntensity[range] ?? intensityFor(range);

export type Vessel = 'power' | 'sail' | 'auxiliary' | 'oars';
export type RuleSet = 'international' | 'inland';

/** One way of complying: the lights it takes, and what the Rules say of it when it is a lesser one. */
export interface Way {
  lights: Light[];
  remark?: string;
}

/** A situation in which lights are shown, with its ways of complying. */
export interface Situation {
  key: 'power' | 'sail' | 'oars' | 'anchor';
  title: string;
  ways: Way[];
  /** What the Rules say when none is met and that may be in order. */
  waived?: string;
}

const sidesOf = (length: number): Light[][] =>
  length < 20 ? [['port', 'starboard'], ['combined']] : [['port', 'starboard']];

function powerWays(length: number, rules: RuleSet, speed: number | undefined): Way[] {
  const forward: Light[] = length >= 50 ? ['masthead', 'after-masthead'] : ['masthead'];
  const ways = sidesOf(length).map((sides): Way => ({ lights: [...forward, ...sides, 'stern'] }));
  if (length < 12) {
    ways.push(...sidesOf(length).map((sides): Way => ({ lights: ['all-round', ...sides] })));
  }
  if (rules === 'international' && length < 7 && speed !== undefined && speed <= 7) {
    ways.push({
      lights: ['all-round'],
      remark:
        'Under 7 m and at most 7 knots an all-round white light is enough, with sidelights too if practicable.',
    });
  }
  return ways;
}

const handLight = (rules: RuleSet, remark: string): Way[] => [
  { lights: ['torch'], remark },
  ...(rules === 'inland' ? [{ lights: ['all-round' as const], remark }] : []),
];

function sailWays(length: number, rules: RuleSet): Way[] {
  const ways = sidesOf(length).map((sides): Way => ({ lights: [...sides, 'stern'] }));
  if (length < 20) ways.push({ lights: ['sailing-lantern'] });
  if (length < 7) {
    ways.push(
      ...handLight(
        rules,
        'Under 7 m a white light ready at hand is enough only where sidelights and sternlight are not practicable.',
      ),
    );
  }
  return ways;
}

/** The situations a vessel needs lights for: Rules 23, 25 and 30. Length in metres, speed in knots. */
export function situations(vessel: Vessel, length: number, rules: RuleSet, speed?: number): Situation[] {
  const found: Situation[] = [];
  if (vessel === 'power' || vessel === 'auxiliary') {
    found.push({ key: 'power', title: 'Under power', ways: powerWays(length, rules, speed) });
  }
  if (vessel === 'sail' || vessel === 'auxiliary') {
    found.push({ key: 'sail', title: 'Under sail', ways: sailWays(length, rules) });
  }
  if (vessel === 'oars') {
    const ways = [...sailWays(Math.max(length, 7), rules), ...handLight(rules, '')];
    found.push({ key: 'oars', title: 'Under oars', ways });
  }
  found.push({
    key: 'anchor',
    title: 'At anchor',
    ways: [{ lights: length >= 50 ? ['all-round', 'all-round'] : ['all-round'] }],
    ...(length < 7
      ? {
          waived:
            'Under 7 m it may be left out away from channels, fairways, anchorages and where others normally navigate.',
        }
      : {}),
  });
  return found;
}
