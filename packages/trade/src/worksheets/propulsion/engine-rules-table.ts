import type { Source } from '../core/worksheet.ts';

/** One printed rule for compression by cylinder. The engine's own manual outranks all of them. */
export interface CompressionRule {
  words: string;
  /** Lowest reading at least this share of the highest. */
  leastShare: number;
  /** Every reading at least so many psi; petrol engines only. */
  leastPsi?: number;
  /** Below so many psi the engine as a whole may be worn, psi; petrol engines only. */
  wornBelowPsi?: number;
  source: Source;
}

export const compressionRules = {
  'within-70': {
    words: 'Lowest at least 70% of the highest, 100 psi at least (inboard petrol manual)',
    leastShare: 0.7,
    leastPsi: 100,
    source: {
      citation: 'MerCruiser service manual, p. 284: lowest at least 70% of the highest, 100 psi at least',
      standing: 'secondary',
      note: 'quoted from manualshive.com 1773303; prints 150 and 105 psi',
    },
  },
  'within-75': {
    words: 'Lowest at least 75% of the highest (road-engine manuals)',
    leastShare: 0.75,
    source: {
      citation: 'Ford and Land Rover workshop manuals: lowest within 75% of the highest',
      standing: 'printed',
      note: 'for engines of road origin; two low neighbours point to the head gasket between them',
    },
  },
  'within-15': {
    words: 'Within 15%, 135 psi at least (four-stroke outboard manual)',
    leastShare: 0.85,
    leastPsi: 135,
    wornBelowPsi: 120,
    source: {
      citation:
        'Mercury 40 FourStroke service manual, p. 1C-18: within 15%, 135 psi at least, wear below 120',
      standing: 'printed',
      note: 'its example of 180 and 162 psi is 10%, the one of 150 and 127.5 is 15%; only the stated 15% is used',
    },
  },
  'within-10': {
    words: 'Within 10%, 100 psi at least (a mechanic’s rule)',
    leastShare: 0.9,
    leastPsi: 100,
    source: {
      citation: 'Within 10% and over 100 psi',
      standing: 'secondary',
      note: 'practice told in an iboats forum',
    },
  },
} as const satisfies Record<string, CompressionRule>;

export type CompressionRuleKey = keyof typeof compressionRules;

export const compressionRuleOf = (key: CompressionRuleKey): CompressionRule => compressionRules[key];

/** Compression a surveyor's page calls typical, psi; for orientation only. */
export const typicalPsi = { petrol: [140, 160], diesel: [350, 475] } as const;

/** Greatest temperature, °F, of exhaust hose and of an ordinary wet section; as printed. */
export const hoses = {
  r2: { words: 'Ordinary wet-exhaust hose, SAE J2006 R2 (212 °F, 100 °C)', limitF: 212 },
  epdm: { words: 'EPDM hose (250 °F, 121 °C)', limitF: 250 },
  silicone: { words: 'Silicone hose (500 °F, 260 °C)', limitF: 500 },
  unknown: { words: 'Not known; taken as ordinary hose', limitF: 212 },
} as const;

/** Normal wet section of a running exhaust, °F; and the dry surface temperature above which a guard is asked. */
export const wetNormalMostF = 200;
export const guardAboveF = 200;
