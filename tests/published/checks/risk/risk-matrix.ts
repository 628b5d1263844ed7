import type { Check, CheckedWorksheet } from '../../support/check.ts';

const severities = ['catastrophic', 'critical', 'marginal', 'negligible'];
const probabilities = ['frequent', 'probable', 'occasional', 'remote', 'improbable', 'eliminated'];

/** Table III of MIL-STD-882E, row by row: H high, S serious, M medium, L low, E eliminated. */
const tableIII = ['HHSM', 'HHSM', 'HSML', 'SMML', 'MMML', 'EEEE'];
const meaning: Record<string, string> = { H: 'high', S: 'serious', M: 'medium', L: 'low', E: 'eliminated' };

const cells: Check[] = tableIII.flatMap((row, r) =>
  [...row].map((letter, c): Check => {
    const code = `${c + 1}${'ABCDEF'[r]}`;
    return {
      name: `${code} is ${meaning[letter]}`,
      source: 'MIL-STD-882E, table III (three public transcriptions that agree)',
      basis: 'printed',
      inputs: {
        severity: severities[c],
        probability: probabilities[r],
        ...(letter === 'E' ? { hazardRemoved: true } : {}),
      },
      outputs: { code, risk: meaning[letter] ?? '' },
      verdict: {
        H: 'unsatisfactory',
        S: 'unsatisfactory',
        M: 'attention',
        L: 'satisfactory',
        E: 'satisfactory',
      }[letter] as Check['verdict'],
    };
  }),
);

const tableII = 'MIL-STD-882E, appendix A, table A-II: bounds 10⁻¹, 10⁻², 10⁻³, 10⁻⁶';
const chances: Array<[number, string, Check['basis']]> = [
  [0.5, 'frequent', 'computed'],
  [0.05, 'probable', 'computed'],
  [0.005, 'occasional', 'computed'],
  [0.0001, 'remote', 'computed'],
  [0.0000001, 'improbable', 'computed'],
  [0.1, 'frequent', 'edge'],
  [0.0999, 'probable', 'edge'],
  [0.01, 'probable', 'edge'],
  [0.00999, 'occasional', 'edge'],
  [0.001, 'occasional', 'edge'],
  [0.000999, 'remote', 'edge'],
  [0.000001, 'remote', 'edge'],
  [0.000000999, 'improbable', 'edge'],
];

export const riskMatrixChecks: CheckedWorksheet = {
  kind: 'risk-matrix',
  checks: [
    ...cells,
    ...chances.map(
      ([chance, level, basis]): Check => ({
        name: `a chance of ${chance} is ${level}`,
        source: tableII,
        basis,
        inputs: { severity: 'critical', chance },
        outputs: { probability: level },
      }),
    ),
    {
      name: 'work that brings 1B to 1E: medium after, unsatisfactory now',
      source: 'MIL-STD-882E, table III, read twice',
      basis: 'computed',
      inputs: {
        severity: 'catastrophic',
        probability: 'probable',
        severityAfter: 'catastrophic',
        probabilityAfter: 'improbable',
      },
      outputs: { code: '1B', codeAfter: '1E', riskAfter: 'medium' },
      verdict: 'unsatisfactory',
    },
    {
      name: 'medium is unsatisfactory where the firm says so',
      source: 'the firm’s own limit',
      basis: 'edge',
      inputs: { severity: 'marginal', probability: 'occasional', worstAccepted: 'medium' },
      verdict: 'unsatisfactory',
    },
    {
      name: 'serious calls for attention where the firm’s limit is high',
      source: 'the firm’s own limit',
      basis: 'edge',
      inputs: { severity: 'critical', probability: 'occasional', worstAccepted: 'high' },
      verdict: 'attention',
    },
    {
      name: 'procedure can’t eliminate a hazard',
      source:
        'MIL-STD-882E 4.3.3 b (acqnotes.com): no doctrine, training, warning or protective gear brings level F',
      basis: 'edge',
      inputs: {
        severity: 'critical',
        probability: 'probable',
        severityAfter: 'critical',
        probabilityAfter: 'eliminated',
      },
      refused: ['probabilityAfter'],
    },
    {
      name: 'neither level nor chance is refused',
      source: 'contradiction',
      basis: 'edge',
      inputs: { severity: 'critical' },
      refused: ['probability'],
    },
    {
      name: 'both are refused too',
      source: 'contradiction',
      basis: 'edge',
      inputs: { severity: 'critical', probability: 'remote', chance: 0.1 },
      refused: ['chance'],
    },
    {
      name: 'a chance above one is refused',
      source: 'impossible',
      basis: 'edge',
      inputs: { severity: 'critical', chance: 1.1 },
      refused: ['chance'],
    },
  ],
  unverified: [
    'The document itself was not opened: the tables are from public transcriptions. One public table that has 3E as low, and a cheat sheet that has 2B as serious, differ from the rest and were not followed.',
    'A chance right at a bound: the edition of 1999 prints bounds without “or equal”, transcriptions of the edition of 2012 with it; the more frequent level is taken.',
  ],
};
