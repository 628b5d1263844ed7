/** Potentials in mV against sea-water silver chloride: `from` is where protection begins, `to` where it is too much. */
export interface Criterion {
  words: string;
  from: number;
  to: number;
  /** Where over-protection harms the boat and not only its anodes; never reached on some. */
  harmFrom: number | null;
  /** What over-protection does. */
  harm: string;
  /** The most positive value at which the bare hull metal rests in sea water. */
  restsAt?: number;
}

/** Ranges as the trade reprints ABYC E-2. Where harm begins: see each line's words and the worksheet's sources. */
export const criteria = {
  'fibreglass-inboard': {
    words: 'Fibreglass, inboard engine',
    from: -750,
    to: -1000,
    harmFrom: null,
    harm: 'anodes are used up for nothing and paint may blister; the hull itself is not harmed',
  },
  'fibreglass-aluminium-drive': {
    words: 'Fibreglass, aluminium outdrive',
    from: -900,
    to: -1050,
    harmFrom: -1200,
    harm: 'the aluminium drive loses paint and is attacked under it',
  },
  aluminium: {
    words: 'Aluminium hull',
    from: -900,
    to: -1100,
    harmFrom: -1200,
    harm: 'aluminium is attacked by too much protection as by too little, and loses its paint',
    restsAt: -760,
  },
  steel: {
    words: 'Steel hull',
    from: -800,
    to: -1050,
    harmFrom: -1100,
    harm: 'paint comes off and strong steels can turn brittle',
    restsAt: -600,
  },
  wood: {
    words: 'Wooden hull',
    from: -550,
    to: -600,
    harmFrom: -600,
    harm: 'the alkali it makes softens timber round the metal',
  },
} as const satisfies Record<string, Criterion>;

/** Least protection of one metal, mV against sea-water silver chloride. */
export const metalLeast = { bronze: -550, stainless: -750, steel: -800, aluminium: -900 } as const;

export type Protection = 'under' | 'well' | 'over';

/** Where a potential lies; both ends of the range are well. More negative is more protected. */
export function protectionAt(potential: number, range: { from: number; to: number }): Protection {
  if (potential > range.from) return 'under';
  return potential < range.to ? 'over' : 'well';
}
