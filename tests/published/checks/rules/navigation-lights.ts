import { type Check, type CheckedWorksheet, near, printed } from '../../support/check.ts';

type Row = Record<string, unknown>;
const well = { lights: 'yes', unobstructed: 'yes' };
const light = (kind: string, range: number, more: Row = {}): Row => ({
  light: kind,
  range,
  ...well,
  ...more,
});

/** The lights of a motor vessel under 20 m, all in order, by range of masthead, side and other lights. */
const motorLights = (masthead: number, side: number, other: number): Row[] => [
  light('masthead', masthead),
  light('port', side),
  light('starboard', side),
  light('stern', other),
  light('all-round', other),
];
const vessel = (length: unknown, more: Row = {}): Row => ({
  rules: 'international',
  vessel: 'power',
  length,
  fitted: [],
  ...more,
});
const small = (more: Row = {}) =>
  vessel(11, { fitted: motorLights(2, 1, 2), mastheadAboveSidelights: 1, ...more });
const replaced = (kind: string, row: Row, lights = motorLights(2, 1, 2)): Row[] =>
  lights.map((found) => (found.light === kind ? row : found));
/** A motor vessel of 15 m in order but for one light: no other light can stand in for it. */
const middle = (kind: string, row: Row) =>
  vessel(15, { fitted: replaced(kind, row, motorLights(3, 2, 2)), mastheadHeight: 2.5 });

const rule22 = 'Rule 22, 33 CFR 83.22';
const ranges: Array<[length: number, masthead: string, side: string, stern: string, allRound: string]> = [
  [50, '6', '3', '3', '3'],
  [49.9, '5', '2', '2', '2'],
  [20, '5', '2', '2', '2'],
  [19.9, '3', '2', '2', '2'],
  [12, '3', '2', '2', '2'],
  [11.9, '2', '1', '2', '2'],
];
const rangeChecks = ranges.map(
  ([length, masthead, side, stern, allRound]): Check => ({
    name: `${length} m: masthead ${masthead}, side ${side}, stern ${stern}, all-round ${allRound} miles`,
    source: rule22,
    basis: 'printed',
    inputs: vessel(length),
    outputs: {
      mastheadRange: printed(masthead),
      sidelightRange: printed(side),
      sternRange: printed(stern),
      allRoundRange: printed(allRound),
    },
    verdict: 'unsatisfactory',
  }),
);
const intensities: Array<[length: number, output: string, candela: string]> = [
  [11, 'sidelightIntensity', '0.9'],
  [11, 'mastheadIntensity', '4.3'],
  [12, 'mastheadIntensity', '12'],
  [20, 'mastheadIntensity', '52'],
  [50, 'mastheadIntensity', '94'],
  [50, 'sternIntensity', '12'],
];
const intensityChecks = intensities.map(
  ([length, output, candela]): Check => ({
    name: `${output} at ${length} m: ${candela} cd`,
    source: '33 CFR 84.14, Table 84.14(b)',
    basis: 'printed',
    inputs: vessel(length),
    outputs: { [output]: printed(candela) },
  }),
);
const heights: Array<[rules: string, breadth: number, metres: string]> = [
  ['international', 4.5, '6'],
  ['international', 7, '7'],
  ['international', 14, '12'],
  ['inland', 4.5, '5'],
  ['inland', 7, '7'],
  ['inland', 14, '8'],
];
const heightChecks = heights.map(
  ([rules, breadth, metres]): Check => ({
    name: `${rules}, 25 m by ${breadth} m: masthead light ${metres} m up`,
    source:
      rules === 'inland'
        ? '33 CFR 84.02(a)(i): 5 m, the breadth, need not exceed 8 m'
        : 'Annex I section 2(a)(i): 6 m, the breadth, need not exceed 12 m',
    basis: 'computed',
    inputs: vessel(25, { rules, breadth }),
    outputs: { mastheadHeightNeeded: printed(metres) },
  }),
);
const ship = (more: Row) =>
  vessel(60, {
    breadth: 10,
    fitted: [...motorLights(6, 3, 3), light('after-masthead', 6), light('all-round', 3)],
    mastheadHeight: 10,
    mastheadAboveSidelights: 4,
    afterMastheadAbove: 4.5,
    mastheadSpacing: 30,
    mastheadFromStem: 15,
    ...more,
  });

export const navigationLightsChecks: CheckedWorksheet = {
  kind: 'navigation-lights',
  checks: [
    ...rangeChecks,
    ...intensityChecks,
    {
      name: 'arcs of 225, 112.5 and 135 degrees',
      source: 'Rule 21, 33 CFR 83.21',
      basis: 'printed',
      inputs: vessel(15),
      outputs: { mastheadArc: printed('225'), sidelightArc: printed('112.5'), sternArc: printed('135') },
    },
    {
      name: 'masthead light of 12 to 20 m: 2.5 m above the gunwale',
      source: '33 CFR 84.02(c), Annex I section 2(c)',
      basis: 'printed',
      inputs: vessel(15),
      outputs: { mastheadHeightNeeded: printed('2.5') },
    },
    {
      name: 'formula for 5 miles: 52.34 cd',
      source: '33 CFR 84.14(a): 3.43e6 × 2e-7 × 25 × 0.8^-5, by hand',
      basis: 'computed',
      inputs: vessel(20),
      outputs: { mastheadIntensityByFormula: near(52.3376, 0.0001) },
    },
    {
      name: 'formula for 2 miles: 4.2875 cd',
      source: '33 CFR 84.14(a): 3.43e6 × 2e-7 × 4 × 0.8^-2, by hand',
      basis: 'computed',
      inputs: vessel(11),
      outputs: { mastheadIntensityByFormula: 4.2875 },
    },
    ...heightChecks,
    {
      name: 'a complete motor boat of 11 m',
      source: 'Rules 22, 23(a), 30(b); Annex I section 2(d)',
      basis: 'computed',
      inputs: small(),
      outputs: { missing: 0, faulty: 0 },
      verdict: 'satisfactory',
    },
    {
      name: 'under 12 m an all-round light stands in for masthead light and sternlight',
      source: 'Rule 23(d), 33 CFR 83.23(d)',
      basis: 'edge',
      inputs: vessel(11.9, {
        fitted: [light('all-round', 2), light('combined', 1)],
        mastheadAboveSidelights: 1,
      }),
      outputs: { missing: 0 },
      verdict: 'satisfactory',
    },
    {
      name: 'from 12 m it does not: masthead light and sternlight are missing',
      source: 'Rule 23(d), 33 CFR 83.23(d)',
      basis: 'edge',
      inputs: vessel(12, { fitted: [light('all-round', 2), light('combined', 2)], mastheadHeight: 2.5 }),
      outputs: { missing: 2 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'sidelights in one lantern at 19.9 m',
      source: 'Rule 21(b): less than 20 m',
      basis: 'edge',
      inputs: vessel(19.9, {
        fitted: [light('masthead', 3), light('combined', 2), light('stern', 2), light('all-round', 2)],
        mastheadHeight: 2.5,
        mastheadAboveSidelights: 1,
      }),
      verdict: 'satisfactory',
    },
    {
      name: 'and not at 20 m',
      source: 'Rule 21(b): less than 20 m',
      basis: 'edge',
      inputs: vessel(20, {
        breadth: 5,
        fitted: [light('masthead', 5), light('combined', 2), light('stern', 2), light('all-round', 2)],
      }),
      outputs: { missing: 2 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'a sailing lantern serves under sail only: the auxiliary lacks her lights under power',
      source: 'Rules 23(a), 25(b)',
      basis: 'computed',
      inputs: vessel(10, {
        vessel: 'auxiliary',
        fitted: [light('sailing-lantern', 2), light('all-round', 2)],
        mastheadAboveSidelights: 1,
      }),
      outputs: { missing: 1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'a sailing boat with her lantern and an anchor light is complete',
      source: 'Rules 25(b), 30(b)',
      basis: 'computed',
      inputs: vessel(10, { vessel: 'sail', fitted: [light('sailing-lantern', 2), light('all-round', 2)] }),
      verdict: 'satisfactory',
    },
    {
      name: 'a 6.9 m dinghy with a torch: only where lights are not practicable',
      source: 'Rule 25(d)(i)',
      basis: 'edge',
      inputs: vessel(6.9, { vessel: 'sail', fitted: [{ light: 'torch', lights: 'yes' }] }),
      verdict: 'attention',
    },
    {
      name: 'at 7 m a torch is not enough',
      source: 'Rule 25(d)(i): less than 7 m',
      basis: 'edge',
      inputs: vessel(7, { vessel: 'sail', fitted: [{ light: 'torch', lights: 'yes' }] }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a 6 m launch of 7 knots with one white light, international',
      source: 'Rule 23(d)(ii): less than 7 m, not over 7 knots',
      basis: 'edge',
      inputs: vessel(6, { maximumSpeed: 7, fitted: [light('all-round', 2)], mastheadAboveSidelights: 1 }),
      outputs: { missing: 0 },
      verdict: 'attention',
    },
    {
      name: 'of 7.1 knots she needs sidelights',
      source: 'Rule 23(d)(ii)',
      basis: 'edge',
      inputs: vessel(6, { maximumSpeed: 7.1, fitted: [light('all-round', 2)], mastheadAboveSidelights: 1 }),
      outputs: { missing: 1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'and inland she needs them whatever her speed',
      source: '33 CFR 83.23(d): no exception under 7 m',
      basis: 'computed',
      inputs: vessel(6, {
        rules: 'inland',
        maximumSpeed: 5,
        fitted: [light('all-round', 2)],
        mastheadAboveSidelights: 1,
      }),
      outputs: { missing: 1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'two anchor lights from 50 m',
      source: 'Rule 30(a), (b): less than 50 m may show one',
      basis: 'edge',
      inputs: ship({ fitted: [...motorLights(6, 3, 3), light('after-masthead', 6)] }),
      outputs: { missing: 1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'a ship of 60 m at every limit of Annex I',
      source:
        'Annex I sections 2(a), 2(g), 3(a): half the length between masthead lights, forward one within a quarter',
      basis: 'edge',
      inputs: ship({}),
      verdict: 'satisfactory',
    },
    {
      name: 'masthead lights 29.9 m apart at 60 m',
      source: 'Annex I section 3(a): not less than one half of the length',
      basis: 'edge',
      inputs: ship({ mastheadSpacing: 29.9 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'inland a quarter of the length is enough',
      source: '33 CFR 84.03(a): not less than one quarter of the length',
      basis: 'edge',
      inputs: ship({ rules: 'inland', mastheadSpacing: 15, afterMastheadAbove: 2, mastheadHeight: 8 }),
      verdict: 'satisfactory',
    },
    {
      name: 'sidelights above three quarters of the masthead light’s height',
      source: 'Annex I section 2(g)',
      basis: 'edge',
      inputs: ship({ mastheadAboveSidelights: 2.4 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'masthead light 0.99 m above the sidelights',
      source: 'Annex I section 2(d), 33 CFR 84.02(d): at least one metre',
      basis: 'edge',
      inputs: small({ mastheadAboveSidelights: 0.99 }),
      verdict: 'unsatisfactory',
    },
    {
      name: 'heights not measured',
      source: 'house rule: not examined is not satisfactory',
      basis: 'computed',
      inputs: vessel(11, { fitted: motorLights(2, 1, 2) }),
      verdict: 'attention',
    },
    {
      name: 'a masthead light of 12 cd reaches 3 miles',
      source: '33 CFR 84.14, Table 84.14(b)',
      basis: 'edge',
      inputs: middle('masthead', { light: 'masthead', intensity: 12, ...well }),
      verdict: 'satisfactory',
    },
    {
      name: 'one of 11.9 cd is too weak',
      source: '33 CFR 84.14, Table 84.14(b)',
      basis: 'edge',
      inputs: middle('masthead', { light: 'masthead', intensity: 11.9, ...well }),
      outputs: { faulty: 1 },
      verdict: 'unsatisfactory',
    },
    {
      name: '3704 m are two miles',
      source: '1852 m to the nautical mile',
      basis: 'edge',
      inputs: middle('stern', { light: 'stern', range: { value: 3704, unit: 'm' }, ...well }),
      verdict: 'satisfactory',
    },
    {
      name: 'a sternlight without a mark of its range can’t be judged',
      source: 'house rule: unknown is not satisfactory',
      basis: 'computed',
      inputs: middle('stern', { light: 'stern', ...well }),
      verdict: 'indeterminate',
    },
    {
      name: 'a dark sternlight',
      source: 'Rule 23(a)(iv)',
      basis: 'computed',
      inputs: middle('stern', light('stern', 2, { lights: 'no' })),
      outputs: { faulty: 1 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'under 12 m the all-round light stands in for a dark sternlight, which is still named',
      source: 'Rule 23(d), 33 CFR 83.23(d)',
      basis: 'computed',
      inputs: small({ fitted: replaced('stern', light('stern', 2, { lights: 'no' })) }),
      outputs: { faulty: 0 },
      verdict: 'attention',
    },
    {
      name: 'a sternlight over 145° still fades in time',
      source: 'Annex I section 9(a)(ii), 33 CFR 84.15(a)(ii): cut-off within 5° outside each limit',
      basis: 'edge',
      inputs: middle('stern', light('stern', 2, { arc: 145 })),
      verdict: 'satisfactory',
    },
    {
      name: 'over 146° it doesn’t',
      source: 'Annex I section 9(a)(ii), 33 CFR 84.15(a)(ii)',
      basis: 'edge',
      inputs: middle('stern', light('stern', 2, { arc: 146 })),
      verdict: 'unsatisfactory',
    },
    {
      name: 'an all-round light hidden over 6° passes, over 7° it is an anchor light too low',
      source: 'Annex I section 9(b), 33 CFR 84.15(b): not more than 6 degrees, anchor lights excepted',
      basis: 'edge',
      inputs: small({ fitted: replaced('all-round', light('all-round', 2, { arc: 354 })) }),
      verdict: 'satisfactory',
    },
    {
      name: 'hidden over 7° at anchor',
      source: 'Annex I section 9(b): anchor lights need not stand at an impracticable height',
      basis: 'edge',
      inputs: small({ fitted: replaced('all-round', light('all-round', 2, { arc: 353 })) }),
      verdict: 'attention',
    },
    {
      name: 'height of a large masthead light without the breadth',
      source: 'Annex I section 2(a)(i)',
      basis: 'edge',
      inputs: vessel(25, { mastheadHeight: 7 }),
      refused: ['breadth'],
    },
    {
      name: 'no length',
      source: 'Rule 22 goes by length',
      basis: 'edge',
      inputs: vessel(0),
      refused: ['length'],
    },
  ],
  unverified: [
    'The international rules and Annex I were read in study pages and a public repository’s copy, not in the convention’s own print; the inland figures are from the regulation itself (2015).',
    'The convention’s text for an international sailing boat under 7 m without lights names a torch or lantern only; the inland rule also an all-round light.',
    'Vertical sectors under heel (Annex I section 10) are not worked: their figures are from memory.',
  ],
};
