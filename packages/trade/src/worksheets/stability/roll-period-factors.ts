/** Rolling factors by condition of loading: metres as IMO prints them, feet as Transport Canada does. */
export interface RollFactor {
  words: string;
  metric: number;
  feet?: number;
}

export const rollFactors = {
  light: { words: 'Empty, or in ballast', metric: 0.88, feet: 0.49 },
  'loaded-20': { words: 'Loaded, liquids 20 % of the load on board', metric: 0.78, feet: 0.435 },
  'loaded-10': { words: 'Loaded, liquids 10 % of the load on board', metric: 0.75, feet: 0.415 },
  'loaded-5': { words: 'Loaded, liquids 5 % of the load on board', metric: 0.73, feet: 0.405 },
  'double-boom-shrimp': { words: 'Double-boom shrimp boat', metric: 0.95 },
  'deep-sea-fishing': { words: 'Deep-sea fishing boat', metric: 0.8 },
  'live-well': { words: 'Boat with a live fish well', metric: 0.6 },
  ordinary: { words: 'Merchant vessel of ordinary form', metric: 0.797, feet: 0.44 },
} as const satisfies Record<string, RollFactor>;

/** Spread of the printed factors, in metres. */
export const factorSpread = 0.05;
/** What a factor in metres is to be multiplied by for feet: √0.3048. */
export const metricToFeet = Math.sqrt(0.3048);

/**
 * Factor of the weather criterion, `2C` with `C = 0.373 + 0.023 B/d − 0.043 Lwl/100`; metres.
 * @param hull beam, draft and waterline length in m
 */
export const computedFactor = (hull: { beam: number; draft: number; waterline: number }): number =>
  2 * (0.373 + 0.023 * (hull.beam / hull.draft) - 0.043 * (hull.waterline / 100));

/** `GM = (f B / T)²`, in the unit of the beam that the factor is for. */
export const gmOfPeriod = (factor: number, beam: number, period: number): number =>
  ((factor * beam) / period) ** 2;

/** The other way: `T = f B / √GM`, s. */
export const periodOfGm = (factor: number, beam: number, gm: number): number =>
  (factor * beam) / Math.sqrt(gm);
