/** MIL-STD-882E tables I to III: severity categories, probability levels, and the risk of each pair. */
export const severities = {
  catastrophic: { category: 1, name: 'Catastrophic' },
  critical: { category: 2, name: 'Critical' },
  marginal: { category: 3, name: 'Marginal' },
  negligible: { category: 4, name: 'Negligible' },
} as const;

export const probabilities = {
  frequent: { level: 'A', name: 'Frequent' },
  probable: { level: 'B', name: 'Probable' },
  occasional: { level: 'C', name: 'Occasional' },
  remote: { level: 'D', name: 'Remote' },
  improbable: { level: 'E', name: 'Improbable' },
  eliminated: { level: 'F', name: 'Eliminated' },
} as const;

export type Severity = keyof typeof severities;
export type Probability = keyof typeof probabilities;
export type RiskLevel = 'high' | 'serious' | 'medium' | 'low' | 'eliminated';

export const severityOrder = Object.keys(severities) as Severity[];
export const probabilityOrder = Object.keys(probabilities) as Probability[];

/** Gravest first. */
export const riskLevels: Record<RiskLevel, string> = {
  high: 'High',
  serious: 'Serious',
  medium: 'Medium',
  low: 'Low',
  eliminated: 'Eliminated',
};

const matrix: Record<Probability, readonly [RiskLevel, RiskLevel, RiskLevel, RiskLevel]> = {
  frequent: ['high', 'high', 'serious', 'medium'],
  probable: ['high', 'high', 'serious', 'medium'],
  occasional: ['high', 'serious', 'medium', 'low'],
  remote: ['serious', 'medium', 'medium', 'low'],
  improbable: ['medium', 'medium', 'medium', 'low'],
  eliminated: ['eliminated', 'eliminated', 'eliminated', 'eliminated'],
};

export interface Risk {
  severity: Severity;
  probability: Probability;
}

/** Table III: the risk of a severity and a probability. */
export const riskOf = ({ severity, probability }: Risk): RiskLevel =>
  // the index is one of the row's four
  matrix[probability][severityOrder.indexOf(severity)] as RiskLevel;

/** The standard's assessment code: `2C`. */
export const codeOf = ({ severity, probability }: Risk): string =>
  `${severities[severity].category}${probabilities[probability].level}`;

/**
 * The level of a chance over the life of the one boat (appendix A, table A-II). A chance right at a bound is given
 * the more frequent level, as the edition of 2012 does.
 * @param chance 0 to 1, above 0
 */
export function levelOfChance(chance: number): Exclude<Probability, 'eliminated'> {
  if (chance >= 1e-1) return 'frequent';
  if (chance >= 1e-2) return 'probable';
  if (chance >= 1e-3) return 'occasional';
  return chance >= 1e-6 ? 'remote' : 'improbable';
}
