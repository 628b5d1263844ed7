/**
 * Reference electrodes by their own potential in mV against the standard hydrogen electrode at 25 °C, and how far that
 * can be relied on aboard. Sea-water silver is copper sulphate less 60 mV, zinc is sea-water silver less 1 030 mV.
 */
export const electrodes = {
  'silver-seawater': { words: 'silver chloride, open to sea water', short: 'Ag/AgCl', own: 256, within: 0 },
  'silver-kcl': {
    words: 'silver chloride in saturated potassium chloride',
    short: 'Ag/AgCl KCl',
    own: 199,
    within: 10,
  },
  calomel: { words: 'saturated calomel', short: 'SCE', own: 241, within: 15 },
  'copper-sulphate': { words: 'copper sulphate', short: 'CSE', own: 316, within: 10 },
  zinc: { words: 'zinc', short: 'Zn', own: -774, within: 30 },
} as const;

export type Electrode = keyof typeof electrodes;

/**
 * A potential read against one electrode as another would read it: `E + (own₁ − own₂)`.
 * @param reading mV; mV come back
 */
export const convertPotential = (reading: number, from: Electrode, to: Electrode): number =>
  reading + electrodes[from].own - electrodes[to].own;
