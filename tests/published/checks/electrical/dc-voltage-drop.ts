import { type CheckedWorksheet, near, printed } from '../../support/check.ts';
import { differingCells, tableChecks } from './dc-voltage-drop-tables.ts';

const feet = (value: number) => ({ value, unit: 'ft' });
const gauge = {
  lengthIs: 'round-trip',
  circuit: 'critical',
  method: 'circular-mils',
  insulation: '105',
  engineSpace: false,
};
const metric = { ...gauge, method: 'metric' };

export const dcVoltageDropChecks: CheckedWorksheet = {
  kind: 'dc-voltage-drop',
  checks: [
    {
      name: '10 A, 21 ft, 3% of 32 V takes 2,352 circular mils',
      source:
        'worked example of CM = K·I·L/E, sportsmensmarine.com/archives/1034 (prints 0.96 V and 2,352; exact 2,351.6)',
      basis: 'printed',
      inputs: { ...gauge, voltage: 32, current: 10, length: feet(21) },
      outputs: { areaNeeded: near(2352, 0.5), allowedDrop: printed('0.96'), sizeForDrop: '14 AWG' },
    },
    {
      name: 'the same on true AWG areas takes one size less',
      source:
        'true AWG area of 16 AWG, 2,600 circular mils, “Boat Wiring”, table of areas (scribd.com/document/552349902)',
      basis: 'computed',
      inputs: { ...gauge, voltage: 32, current: 10, length: feet(21), areaBasis: 'AWG' },
      outputs: { sizeForDrop: '16 AWG' },
    },
    {
      name: '10 A, 21 ft, 10% of 12 V takes 16 AWG',
      source: 'hollandmarine.com catalogue 2021, p. 53, 10% table: 16 AWG',
      basis: 'printed',
      inputs: { ...gauge, circuit: 'other', voltage: 12, current: 10, length: feet(21) },
      outputs: { sizeForDrop: '16 AWG', areaNeeded: 1881.25 },
    },
    {
      name: '100 A, 10 ft, 24 V: 8 AWG for the drop on true areas, 6 AWG for the current',
      source:
        'bluesea.com article 535, selection chart: 6 AWG; 8 AWG at 105 °C carries 80 A, 33 CFR 183.425 Table 5',
      basis: 'printed',
      inputs: { ...gauge, voltage: 24, current: 100, length: feet(10), areaBasis: 'AWG', fitted: '8 AWG' },
      outputs: { sizeForDrop: '8 AWG', sizeForCurrent: '6 AWG', sizeNeeded: '6 AWG', mayCarry: 80 },
      verdict: 'unsatisfactory',
    },
    {
      name: 'metric: 10 A, 6.4 m, 2.5 mm² loses 0.420 V',
      source: 'E = 0.0164·I·L/S, ISO 10133, by hand: 0.0164 × 10 × 6.4 / 2.5',
      basis: 'computed',
      inputs: { ...metric, voltage: 12, current: 10, length: 6.4, fittedArea: 2.5 },
      outputs: { drop: printed('0.420'), areaNeeded: printed('2.92'), sizeForDrop: '4 mm²' },
      verdict: 'unsatisfactory',
    },
    {
      name: 'metric: 20 A, 10 m, 10 mm² loses 0.328 V',
      source: 'E = 0.0164·I·L/S, ISO 10133, by hand: 0.0164 × 20 × 10 / 10',
      basis: 'computed',
      inputs: { ...metric, voltage: 12, current: 20, length: 10, fittedArea: 10 },
      outputs: { drop: printed('0.328') },
      verdict: 'satisfactory',
    },
    {
      name: 'metric: 2.1 A, 18 m of cable one way, 0.6 V takes 2.5 mm²',
      source: 'svb-media.de cable guide, S = 2·L·I/(56·U): prints 2.5 mm² (2.25 by 1/56, 2.07 by 0.0164)',
      basis: 'printed',
      inputs: { ...metric, lengthIs: 'one-way', voltage: 12, allowedDrop: 5, current: 2.1, length: 18 },
      outputs: { sizeForDrop: '2.5 mm²', areaNeeded: near(2.25, 0.225), allowedDrop: printed('0.6') },
    },
    {
      name: 'one way counts twice',
      source: 'definition of L in ABYC E-11: source to load and back',
      basis: 'computed',
      inputs: { ...gauge, lengthIs: 'one-way', voltage: 32, current: 10, length: feet(10.5) },
      outputs: { areaNeeded: near(2352, 0.5) },
    },
    ...tableChecks,
    {
      name: 'a drop that is just 3% is within 3%',
      source: 'by hand: 0.0164 × 10 × 9 / 4.1 = 0.36 V = 3% of 12 V',
      basis: 'edge',
      inputs: { ...metric, voltage: 12, current: 10, length: 9, fittedArea: 4.1 },
      outputs: { dropShare: 3 },
      verdict: 'satisfactory',
    },
    {
      name: 'a conductor a thousandth thinner is not',
      source: 'by hand: 0.0164 × 10 × 9 / 4.099 = 3.0007%',
      basis: 'edge',
      inputs: { ...metric, voltage: 12, current: 10, length: 9, fittedArea: 4.099 },
      verdict: 'unsatisfactory',
    },
    {
      name: '60 A on 10 AWG at 105 °C is allowed',
      source: '33 CFR 183.425, Table 5: 10 AWG, 105 °C, 60 A',
      basis: 'edge',
      inputs: { ...gauge, voltage: 12, current: 60, length: feet(5), fitted: '10 AWG', circuit: 'other' },
      verdict: 'satisfactory',
    },
    {
      name: '60.1 A is not',
      source: '33 CFR 183.425, Table 5: 10 AWG, 105 °C, 60 A',
      basis: 'edge',
      inputs: { ...gauge, voltage: 12, current: 60.1, length: feet(5), fitted: '10 AWG', circuit: 'other' },
      verdict: 'unsatisfactory',
    },
    {
      name: 'no current still takes the least size',
      source: '33 CFR 183.425(e): 16 AWG when separate',
      basis: 'edge',
      inputs: { ...gauge, voltage: 12, current: 0, length: feet(10) },
      outputs: { areaNeeded: 0, sizeForDrop: '18 AWG', sizeNeeded: '16 AWG' },
    },
    {
      name: 'beyond 4/0 AWG no size is named',
      source: 'largest size of the table: 205,500 circular mils',
      basis: 'edge',
      inputs: { ...gauge, voltage: 12, current: 400, length: feet(20) },
      outputs: { sizeNeeded: null },
      verdict: 'indeterminate',
    },
    {
      name: 'above 50 V is not judged',
      source: 'scope of ISO 10133: 50 V DC or less',
      basis: 'edge',
      inputs: { ...gauge, voltage: 50.1, current: 10, length: feet(20) },
      verdict: 'indeterminate',
    },
    {
      name: 'an AWG size by the metric formula is refused',
      source: 'the two formulas have their own sizes',
      basis: 'edge',
      inputs: { ...metric, voltage: 12, current: 10, length: 5, fitted: '10 AWG' },
      refused: ['fitted'],
    },
  ],
  unverified: [
    `Published selection tables against CM = K·I·L/E with K = 10.75: ${differingCells.join(' ')}`,
    'The ABYC E-11 and ISO 10133 clauses were seen as quoted by others, not in the standards.',
    'The metric sizes offered are those usually sold; ISO 10133’s own table of amperes was not seen, so a metric size is given the amperes of the largest AWG size it reaches.',
  ],
};
