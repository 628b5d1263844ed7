import { type Check, type CheckedWorksheet, printed } from '../../support/check.ts';

const seen = { recombining: 'no', outletHigh: 'yes', leadsOutside: 'yes', noSparks: 'yes' };
const of = (
  battery: string,
  charge: string,
  cells: number,
  capacity: number,
  more: Record<string, unknown> = {},
) => ({ ...seen, battery, charge, cells, capacity, ...more });

const gasTable = 'estimation.tools, battery ventilation, table of gas currents by EN 50272-2: ';
const currents: Array<[string, string, number]> = [
  ['vented-lead', 'float', 5],
  ['vented-lead', 'boost', 20],
  ['valve-regulated-lead', 'float', 1],
  ['valve-regulated-lead', 'boost', 8],
  ['vented-nickel-cadmium', 'float', 5],
  ['vented-nickel-cadmium', 'boost', 50],
];

const worked: Array<[string, string, number, number, string, string]> = [
  ['vented-lead', 'boost', 6, 100, '0.600', '16.80'],
  ['vented-lead', 'float', 12, 200, '0.600', '16.80'],
  ['valve-regulated-lead', 'boost', 6, 220, '0.528', '14.78'],
  ['valve-regulated-lead', 'float', 6, 200, '0.060', '1.68'],
];

const ventedHundred = (area: number, more: Record<string, unknown> = {}) =>
  of('vented-lead', 'boost', 6, 100, { inlet: area, outlet: area, ...more });

export const batteryVentilationChecks: CheckedWorksheet = {
  kind: 'battery-ventilation',
  checks: [
    {
      name: '108 cells of 50 A·h, valve-regulated, float: 0.27 m³/h, 7.56 cm², 3.1 cm across',
      source: 'catalogue page 82 on EN 50272-2, 8.2 (yumpu 21369034): example with a 216 V, 50 A·h battery',
      basis: 'printed',
      inputs: of('valve-regulated-lead', 'float', 108, 50, { inlet: 7.56, outlet: 7.56 }),
      outputs: {
        airflow: printed('0.27', 'm3/h'),
        openingArea: printed('7.56', 'cm2'),
        openingDiameter: printed('3.1', 'cm'),
      },
      verdict: 'satisfactory',
    },
    {
      name: '24 V, 48 A·h, valve-regulated, float: 0.8 cm²',
      source: 'gebaeudedigital.de on EN 50272-2: openings of only 0.8 cm² for a 24 V / 48 A·h battery',
      basis: 'printed',
      inputs: of('valve-regulated-lead', 'float', 12, 48),
      outputs: { openingArea: printed('0.8', 'cm2') },
    },
    ...currents.map(
      ([battery, charge, current]): Check => ({
        name: `${battery}, ${charge}: ${current} mA for each A·h`,
        source: `${gasTable}${current}`,
        basis: 'printed',
        inputs: of(battery, charge, 6, 100),
        outputs: { gasCurrent: current },
      }),
    ),
    {
      name: 'recombination caps halve it',
      source: `${gasTable}reduced to 50 %`,
      basis: 'printed',
      inputs: of('vented-lead', 'boost', 6, 100, { recombining: 'yes' }),
      outputs: { gasCurrent: 10, airflow: printed('0.300', 'm3/h') },
    },
    ...worked.map(
      ([battery, charge, cells, capacity, airflow, area]): Check => ({
        name: `${cells} cells of ${capacity} A·h, ${battery}, ${charge}: ${airflow} m³/h`,
        source: 'Q = 0.05 n I C / 1000 and A = 28 Q (exide-nordic.com, on EN 50272-3), worked by hand',
        basis: 'computed',
        inputs: of(battery, charge, cells, capacity),
        outputs: { airflow: printed(airflow, 'm3/h'), openingArea: printed(area, 'cm2') },
      }),
    ),
    {
      name: 'openings of exactly 28 Q are enough',
      source: 'A = 28 Q',
      basis: 'edge',
      inputs: ventedHundred(16.8),
      outputs: { inletShare: 100, outletShare: 100 },
      verdict: 'satisfactory',
    },
    {
      name: 'a tenth less is not',
      source: 'A = 28 Q',
      basis: 'edge',
      inputs: ventedHundred(16.7),
      verdict: 'unsatisfactory',
    },
    {
      name: 'a fan of exactly Q is enough',
      source: 'Q = 0.05 n I C / 1000',
      basis: 'edge',
      inputs: of('vented-lead', 'boost', 6, 100, { fan: { value: 10, unit: 'L/min' } }),
      outputs: { fanShare: 100 },
      verdict: 'satisfactory',
    },
    {
      name: '40 °C is still within the table',
      source: `${gasTable}up to 40 °C`,
      basis: 'edge',
      inputs: ventedHundred(20, { temperature: 40 }),
      verdict: 'satisfactory',
    },
    {
      name: 'above 40 °C is not',
      source: `${gasTable}up to 40 °C`,
      basis: 'edge',
      inputs: ventedHundred(20, { temperature: 40.1 }),
      verdict: 'indeterminate',
    },
    {
      name: 'unless the maker says how much it gasses',
      source: 'maker’s value in place of the table',
      basis: 'edge',
      inputs: ventedHundred(20, { temperature: 50, makersGasCurrent: 23 }),
      outputs: { airflow: printed('0.690', 'm3/h') },
      verdict: 'satisfactory',
    },
    {
      name: 'lithium is outside the formula',
      source: 'no hydrogen from charging',
      basis: 'edge',
      inputs: of('lithium', 'boost', 4, 100),
      verdict: 'indeterminate',
    },
    {
      name: 'nothing measured can’t be judged',
      source: 'openings or fan are needed to compare',
      basis: 'edge',
      inputs: of('vented-lead', 'boost', 6, 100),
      verdict: 'indeterminate',
    },
    {
      name: 'caps on valve-regulated cells are refused',
      source: 'contradiction',
      basis: 'edge',
      inputs: of('valve-regulated-lead', 'float', 6, 100, { recombining: 'yes' }),
      refused: ['recombining'],
    },
    {
      name: 'half a cell is refused',
      source: 'impossible',
      basis: 'edge',
      inputs: of('vented-lead', 'float', 5.5, 100),
      refused: ['cells'],
    },
  ],
  unverified: [
    'EN IEC 62485-2 itself was not read: formula, table and examples are from makers’ and engineers’ reprints of EN 50272-2, its forerunner.',
    'One reprint of IEC 62485-3 (propulsion batteries) has 0.055 in place of 0.05; the worksheet keeps 0.05 and says so.',
    'The standard’s distance from sparks was found in no text we could read, so it is not worked.',
  ],
};
