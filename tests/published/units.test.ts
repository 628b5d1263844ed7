import { comparable, convert, symbolOf, type Unit, units } from '@garboard/trade/worksheets/core/units';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';

// NIST Special Publication 811 (2008), appendix B.8: the factors as printed there, by unit.
const printedFactors: [Unit, Unit, string][] = [
  ['psi', 'Pa', '6.894757E+03'],
  ['ksi', 'Pa', '6.894757E+06'],
  ['inH2O', 'Pa', '2.490889E+02'],
  ['mmH2O', 'Pa', '9.80665E+00'],
  ['inHg', 'Pa', '3.386389E+03'],
  ['mmHg', 'Pa', '1.333224E+02'],
  ['lbf', 'N', '4.448222E+00'],
  ['lbf in', 'N m', '1.129848E-01'],
  ['lbf ft', 'N m', '1.355818E+00'],
  ['kgf', 'N', '9.80665E+00'],
  ['hp', 'W', '7.456999E+02'],
  ['PS', 'W', '7.354988E+02'],
  ['usgal', 'm3', '3.785412E-03'],
  ['ft3', 'm3', '2.831685E-02'],
  ['in3', 'm3', '1.638706E-05'],
  ['cfm', 'm3/h', String(4.719474e-4 * 3600)],
  ['usgpm', 'm3/h', String(6.30902e-5 * 3600)],
  ['kn', 'm/s', '5.144444E-01'],
  ['mph', 'm/s', '4.4704E-01'],
  ['nmi', 'm', '1.852E+03'],
  ['mil', 'm', '2.54E-05'],
  ['cmil', 'm2', '5.067075E-10'],
  ['lb', 'kg', '4.535924E-01'],
  ['oz', 'kg', '2.834952E-02'],
  ['ston', 'kg', '9.071847E+02'],
  ['lton', 'kg', '1.016047E+03'],
  ['lb/ft', 'kg/m', '1.488164E+00'],
  ['lb/ft3', 'kg/m3', '1.601846E+01'],
  ['deg', 'rad', '1.745329E-02'],
  ['rpm', 'Hz', '1.666667E-02'],
];

// The library's name for units that both know; its constants are rounded to about one in ten million. Its inch of
// water is that of water at 4 °C, ours the conventional one.
const elsewhere: Partial<Record<Unit, string>> = {
  m: 'm',
  mm: 'mm',
  cm: 'cm',
  km: 'km',
  in: 'in',
  ft: 'ft',
  mil: 'mil',
  nmi: 'nmi',
  m2: 'm2',
  mm2: 'mm2',
  in2: 'in2',
  ft2: 'ft2',
  m3: 'm3',
  L: 'l',
  ft3: 'ft3',
  usgal: 'gal',
  s: 's',
  min: 'min',
  h: 'h',
  kn: 'kt',
  mph: 'mph',
  'm/s': 'm/s',
  kg: 'kg',
  lb: 'lbs',
  t: 'tonne',
  oz: 'oz',
  N: 'N',
  lbf: 'lbf',
  Pa: 'Pa',
  kPa: 'kPa',
  bar: 'bar',
  psi: 'psi',
  mmHg: 'mmHg',
  W: 'W',
  kW: 'kW',
  hp: 'hp',
  'lbf ft': 'ft*lbf',
  'N m': 'N*m',
  'L/min': 'l/min',
  usgpm: 'gal/min',
  cfm: 'ft3/min',
  'm3/h': 'm3/h',
  'A/m2': 'A/m2',
  'mA/ft2': 'mA/ft2',
  'Ah/kg': 'A*h/kg',
  'ohm m': 'ohm*m',
  'ohm cm': 'ohm*cm',
};

const pairs = units.flatMap((a) => units.filter((b) => comparable(a, b)).map((b): [Unit, Unit] => [a, b]));

describe('units', () => {
  it.each(printedFactors)('%s in %s as NIST SP 811 appendix B.8 prints it', (from, to, factor) => {
    const printed = Number(factor);
    expect(Math.abs(convert(1, from, to) - printed)).toBeLessThanOrEqual(5e-7 * printed);
  });

  it.each([
    [32, 'degF', 0],
    [212, 'degF', 100],
    [273.15, 'K', 0],
    [-40, 'degF', -40],
  ] as const)('%d %s is %d °C: fixed points of the scales', (value, unit, celsius) => {
    expect(convert(value, unit, 'degC')).toBe(celsius);
  });

  it('agree with an independent library wherever it knows them', () => {
    let compared = 0;
    for (const [from, to] of pairs) {
      const [a, b] = [elsewhere[from], elsewhere[to]];
      if (!a || !b || from === to) continue;
      compared += 1;
      const theirs = Qty.swiftConverter(a, b)(1);
      expect(Math.abs(convert(1, from, to) / theirs - 1), `${from} in ${to}`).toBeLessThan(5e-6);
    }
    expect(compared).toBeGreaterThan(100);
  });

  it('come back unchanged from any other unit of their kind, to eleven digits', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        ([a, b], value) => {
          const back = convert(convert(value, a, b), b, a);
          expect(Math.abs(back - value)).toBeLessThanOrEqual(Math.abs(value) * 1e-10 + 1e-9);
        },
      ),
    );
  });

  it('of different kinds are never converted, and every one has its symbol', () => {
    expect(() => convert(1, 'm', 'kg')).toThrow(/can't be converted/);
    expect(comparable('psi', 'mbar')).toBe(true);
    expect(comparable('psi', 'lbf')).toBe(false);
    expect(units.filter((unit) => unit !== 'one' && symbolOf(unit) === '')).toEqual([]);
  });
});
