import {
  codeOf,
  probabilities,
  probabilityOrder,
  type Risk,
  type RiskLevel,
  riskLevels,
  riskOf,
  severities,
  severityOrder,
} from './risk-table.ts';
import type { Urgency } from './vocabulary.ts';

/** Severity category and probability level by their signs in MIL-STD-882E, tables I and II. */
export const severityCategories = [1, 2, 3, 4] as const;
export const probabilityLevels = ['A', 'B', 'C', 'D', 'E', 'F'] as const;

export interface Grading {
  severity: (typeof severityCategories)[number];
  probability: (typeof probabilityLevels)[number];
}

/** What each category means for a boat and those aboard; the worst that can credibly happen counts. */
export const severityWords: Record<Grading['severity'], string> = {
  1: 'Catastrophic: death, lasting total disability or loss of the boat',
  2: 'Critical: lasting partial disability, several in hospital or major damage',
  3: 'Marginal: an injury that costs working days, or damage that stops the boat',
  4: 'Negligible: a lesser injury or damage',
};

/** What each level means over the life of the boat, left as she is. */
export const probabilityWords: Record<Grading['probability'], string> = {
  A: 'Frequent: likely to happen often',
  B: 'Probable: will happen several times',
  C: 'Occasional: likely to happen some time',
  D: 'Remote: unlikely but possible',
  E: 'Improbable: so unlikely that it may be taken not to happen',
  F: 'Eliminated: can’t happen, the hazard itself is gone',
};

/** Which of our urgencies a risk suggests. The matrix is published; this step is ours: common practice, no source. */
const urgencyOf: Record<RiskLevel, { urgency: Urgency; withinDays: number | null }> = {
  high: { urgency: 'before-use', withinDays: null },
  serious: { urgency: 'within-days', withinDays: 30 },
  medium: { urgency: 'next-layup', withinDays: null },
  low: { urgency: 'note', withinDays: null },
  eliminated: { urgency: 'note', withinDays: null },
};

/** The published cell and the urgency it suggests; the surveyor's own judgement stands above it. */
export interface Suggestion {
  /** Such as `2C`. */
  code: string;
  risk: RiskLevel;
  /** The cell in words: `Serious risk (2C: critical, occasional)`. */
  words: string;
  urgency: Urgency;
  withinDays: number | null;
}

export const gradingSource = 'MIL-STD-882E, tables I to III';

function riskAt({ severity, probability }: Grading): Risk {
  const named = {
    severity: severityOrder[severityCategories.indexOf(severity)],
    probability: probabilityOrder[probabilityLevels.indexOf(probability)],
  };
  if (!named.severity || !named.probability) throw new RangeError(`No such cell: ${severity}${probability}.`);
  return { severity: named.severity, probability: named.probability };
}

/** The cell of the matrix for a grading, and what it suggests. @throws RangeError outside 1 to 4 and A to F */
export function suggestUrgency(grading: Grading): Suggestion {
  const cell = riskAt(grading);
  const risk = riskOf(cell);
  const level = risk === 'eliminated' ? 'Hazard eliminated' : `${riskLevels[risk]} risk`;
  const [severity, probability] = [severities[cell.severity].name, probabilities[cell.probability].name];
  return {
    code: codeOf(cell),
    risk,
    words: `${level} (${codeOf(cell)}: ${severity.toLowerCase()}, ${probability.toLowerCase()})`,
    ...urgencyOf[risk],
  };
}
