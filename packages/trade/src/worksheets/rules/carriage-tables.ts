/** What each kind of signal is, with the CFR part it is approved under. */
export const signalKinds = {
  'electric-light': 'Electric distress light (161.013)',
  flag: 'Orange flag (160.072)',
  'hand-flare': 'Hand red flare (160.021)',
  'parachute-flare': 'Parachute red flare, with launcher (160.024)',
  'rocket-flare': 'Rocket parachute red flare (160.036)',
  'aerial-flare': 'Aerial red flare (160.066)',
  'hand-smoke': 'Hand orange smoke (160.037)',
  'floating-smoke': 'Floating orange smoke (160.022, 160.057)',
} as const;
export type SignalKind = keyof typeof signalKinds;

/** When each serves and how many are needed: 33 CFR 175.130 and its table. */
export const signalTable: Record<SignalKind, { day: boolean; night: boolean; needed: 1 | 3 }> = {
  'electric-light': { day: false, night: true, needed: 1 },
  flag: { day: true, night: false, needed: 1 },
  'hand-flare': { day: true, night: true, needed: 3 },
  'parachute-flare': { day: true, night: true, needed: 3 },
  'rocket-flare': { day: true, night: true, needed: 3 },
  'aerial-flare': { day: true, night: true, needed: 3 },
  'hand-smoke': { day: true, night: false, needed: 3 },
  'floating-smoke': { day: true, night: false, needed: 3 },
};

/** Marks on portable extinguishers. */
export const ratings = {
  '5-B': '5-B',
  '10-B': '10-B',
  '20-B': '20-B or larger',
  'B-I': 'B-I',
  'B-II': 'B-II',
  other: 'Other, or none',
} as const;
export type Rating = keyof typeof ratings;

/** What each counts for in units of 5-B: one 20-B for two, a 10-B for one; B-II was good for two B-I. */
export const unitsOf5B: Record<Rating, number> = {
  '5-B': 1,
  '10-B': 1,
  '20-B': 2,
  'B-I': 1,
  'B-II': 2,
  other: 0,
};

/** Up to 65 ft: units of 5-B by length, without and with a fixed system; each row from its length in feet. */
export const extinguishersByLength = [
  { from: 0, without: 1, with: 0 },
  { from: 26, without: 2, with: 1 },
  { from: 40, without: 3, with: 2 },
] as const;

/** Over 65 ft: extinguishers of 20-B by gross tons, each row up to and with its tonnage. */
export const extinguishersByTonnage = [
  { upTo: 50, number: 1 },
  { upTo: 100, number: 2 },
  { upTo: 500, number: 3 },
  { upTo: 1000, number: 6 },
] as const;

/** Over 65 ft, in the engine space: one 20-B for each so much power or part of it, and no more than so many. */
export const enginePerExtinguisher = { horsepower: 1000, atMost: 6 } as const;

/** Years a non-rechargeable extinguisher is good for from its year of making. */
export const extinguisherYears = 12;
