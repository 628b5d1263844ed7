/** A metal in flowing sea water: its range of potential in mV against saturated calomel, most noble last. */
export interface SeriesMetal {
  words: string;
  low: number;
  high: number;
  /** Equivalent mass, g/mol, and density, g/cm³, where it dissolves in one way. */
  dissolves?: { equivalent: number; density: number };
}

const steel = { equivalent: 55.845 / 2, density: 7.87 };

/** Galvanic series of the Australasian Corrosion Association; titanium's lower end from the ASM Handbook, vol. 13. */
export const series = {
  magnesium: {
    words: 'Magnesium',
    low: -1630,
    high: -1600,
    dissolves: { equivalent: 24.305 / 2, density: 1.74 },
  },
  zinc: { words: 'Zinc', low: -1030, high: -980, dissolves: { equivalent: 65.38 / 2, density: 7.14 } },
  aluminium: {
    words: 'Aluminium alloys',
    low: -1000,
    high: -760,
    dissolves: { equivalent: 26.982 / 3, density: 2.7 },
  },
  cadmium: { words: 'Cadmium', low: -740, high: -700, dissolves: { equivalent: 112.41 / 2, density: 8.65 } },
  steel: { words: 'Mild steel or cast iron', low: -720, high: -600, dissolves: steel },
  'low-alloy-steel': { words: 'Low-alloy steel', low: -630, high: -570, dissolves: steel },
  'stainless-304-active': { words: 'Active stainless 302/304', low: -580, high: -440 },
  'stainless-316-active': { words: 'Active stainless 316/317', low: -460, high: -330 },
  'aluminium-bronze': { words: 'Aluminium bronze', low: -400, high: -310 },
  brass: { words: 'Naval, yellow or red brass', low: -400, high: -310 },
  copper: { words: 'Copper', low: -370, high: -300 },
  'admiralty-brass': { words: 'Admiralty or aluminium brass', low: -360, high: -260 },
  'manganese-bronze': { words: 'Manganese bronze', low: -340, high: -260 },
  'silicon-bronze': { words: 'Silicon bronze', low: -290, high: -250 },
  'tin-bronze': { words: 'Tin bronze G or M', low: -320, high: -240 },
  'copper-nickel-90': { words: '90-10 copper-nickel', low: -280, high: -220 },
  lead: { words: 'Lead', low: -250, high: -190 },
  'copper-nickel-70': { words: '70-30 copper-nickel', low: -240, high: -170 },
  'nickel-aluminium-bronze': { words: 'Nickel-aluminium bronze', low: -220, high: -140 },
  silver: { words: 'Silver', low: -150, high: -100 },
  'stainless-304-passive': { words: 'Passive stainless 302 to 347', low: -100, high: -40 },
  'nickel-copper': { words: 'Nickel-copper 400 or K-500', low: -140, high: -30 },
  'stainless-316-passive': { words: 'Passive stainless 316/317', low: -100, high: 0 },
  titanium: { words: 'Titanium', low: -100, high: 60 },
  platinum: { words: 'Platinum', low: 180, high: 260 },
  graphite: { words: 'Graphite or carbon fibre', low: 200, high: 300 },
} as const satisfies Record<string, SeriesMetal>;

export type MetalKey = keyof typeof series;

/** Its words by key, in the order of the series. */
export const metalChoices = Object.fromEntries(
  Object.entries(series).map(([key, metal]) => [key, metal.words]),
) as { [K in MetalKey]: string };

/** A metal by its key. */
export const metalOf = (key: MetalKey): SeriesMetal => series[key];

/** Least and greatest difference of potential between two metals, mV; the anode unless their ranges overlap. */
export function couple(a: MetalKey, b: MetalKey) {
  const [first, second] = [metalOf(a), metalOf(b)];
  const [anode, cathode] = first.low + first.high <= second.low + second.high ? [a, b] : [b, a];
  const [base, noble] = [metalOf(anode), metalOf(cathode)];
  const least = Math.max(0, noble.low - base.high);
  return { anode, cathode, told: noble.low > base.high, least, greatest: noble.high - base.low };
}

const faraday = 96_485.332;
const secondsPerYear = 365 * 86_400;

/**
 * How fast a metal is eaten away by a current that leaves it evenly: `i · M/n / (F ρ)`, mm a year.
 * @param density A/m²
 * @returns null for alloys that dissolve in more than one way
 */
export function penetration(metal: SeriesMetal, density: number): number | null {
  if (!metal.dissolves) return null;
  const gramsPerCubicMetre = metal.dissolves.density * 1e6;
  return (1000 * density * metal.dissolves.equivalent * secondsPerYear) / (faraday * gramsPerCubicMetre);
}
