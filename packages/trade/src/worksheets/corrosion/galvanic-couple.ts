import { checked, choice, fallback, measure, optional, plainNumber, yesNo } from '../core/fields.ts';
import { measured, number, said } from '../core/outputs.ts';
import { conclude } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';
import { judgeCouple, rateBands } from './galvanic-judge.ts';
import { couple, metalChoices, metalOf, penetration } from './galvanic-series.ts';
import { seriesDrawing } from './series-drawing.ts';

const area = { unit: 'cm2', units: ['m2', 'mm2', 'in2', 'ft2'], above: 0, max: 100_000_000 } as const;

const inputs = {
  metalA: choice({ label: 'One metal', choices: metalChoices }),
  metalB: choice({ label: 'The other metal', choices: metalChoices }),
  electrolyte: choice({
    label: 'What wets them both',
    choices: {
      sea: 'Sea water, immersed',
      brackish: 'Brackish water, immersed',
      spray: 'Spray or salt damp, not immersed',
      fresh: 'Fresh water',
      dry: 'Nothing: dry',
    },
  }),
  joined: checked({
    label: 'Joined by metal',
    help: 'Touching, bolted together or bonded by a wire: by ohmmeter, out of the water',
  }),
  areaA: optional(measure({ label: 'Wetted area of the one', help: 'Without sound paint', ...area })),
  areaB: optional(measure({ label: 'Wetted area of the other', ...area })),
  coupleCurrent: optional(
    measure({
      label: 'Current between them',
      help: 'Milliammeter in place of the joint, steady, under water',
      unit: 'mA',
      units: ['uA', 'A'],
      min: 0,
      max: 100_000,
    }),
  ),
  sacrificial: fallback(yesNo({ label: 'The less noble one is a sacrificial anode' }), false),
  limit: fallback(
    measure({ label: 'Difference that matters', unit: 'mV', units: ['V'], min: 20, max: 1000 }),
    200,
  ),
  smallRatio: fallback(
    plainNumber({
      label: 'Slow up to this much noble metal to less noble',
      help: 'Ratio of areas',
      above: 0,
      max: 1,
    }),
    0.1,
  ),
  largeRatio: fallback(
    plainNumber({
      label: 'Fast from this much noble metal to less noble',
      help: 'Ratio of areas',
      min: 1,
      max: 1000,
    }),
    10,
  ),
};

type Asked = Values<typeof inputs>;

/** mV, ratio of areas, A/m² and mm a year; what was not given or can't be told is left out. */
function work(v: Asked) {
  const pair = couple(v.metalA, v.metalB);
  const [anodeArea, cathodeArea] = pair.anode === v.metalA ? [v.areaA, v.areaB] : [v.areaB, v.areaA];
  const ratio =
    pair.told && anodeArea && cathodeArea ? cathodeArea.in('cm2') / anodeArea.in('cm2') : undefined;
  const density =
    pair.told && v.coupleCurrent && anodeArea ? v.coupleCurrent.in('A') / anodeArea.in('m2') : undefined;
  const rate = density === undefined ? null : penetration(metalOf(pair.anode), density);
  return { ...pair, ratio, density, rate };
}

const range = (key: Asked['metalA']) => {
  const { low, high } = metalOf(key);
  return `${formatNumber(low)} to ${formatNumber(high)} mV`;
};

/** Two metals wetted by the same water: which is attacked, and how much. */
export const galvanicCouple = defineWorksheet({
  kind: 'galvanic-couple',
  version: 1,
  title: 'Galvanic couple',
  group: 'corrosion',
  system: 'corrosion-protection',
  purpose:
    'Tells which of two metals is attacked by the other and whether that matters, from the galvanic series, the water, their areas and the current if it was measured.',
  inputs,
  refuse: (v) =>
    v.metalA === v.metalB
      ? [{ field: 'metalB', message: 'The other metal must not be the same as the one.' }]
      : [],
  applicability:
    'The series is of flowing sea water. Stainless steel in crevices and still water turns active: try both. A series tells the direction of attack, and only roughly its rate.',
  compute: (v) => {
    const w = work(v);
    const [a, b] = [metalOf(v.metalA), metalOf(v.metalB)];
    const anode = metalOf(w.anode).words;
    const cathode = metalOf(w.cathode).words;
    return {
      outputs: {
        lowA: measured(`${a.words}, from`, a.low, 'mV', { digits: 4 }),
        highA: measured(`${a.words}, to`, a.high, 'mV', { digits: 4 }),
        lowB: measured(`${b.words}, from`, b.low, 'mV', { digits: 4 }),
        highB: measured(`${b.words}, to`, b.high, 'mV', { digits: 4 }),
        anode: said('Attacked', w.told ? w.anode : null, w.told ? anode : 'either: their ranges overlap'),
        leastDifference: measured('Difference, at least', w.least, 'mV'),
        greatestDifference: measured('Difference, at most', w.greatest, 'mV'),
        areaRatio: number('Area of the nobler to the less noble', w.ratio ?? null),
        currentDensity: measured('Current leaving the less noble', w.density ?? null, 'A/m2'),
        rate: measured('Eaten away, if evenly', w.rate, 'mm/year', { digits: 2 }),
      },
      ...conclude(
        judgeCouple({
          anode,
          cathode,
          least: w.least,
          greatest: w.greatest,
          limit: v.limit.in('mV'),
          electrolyte: v.electrolyte,
          joined: v.joined,
          sacrificial: v.sacrificial,
          smallRatio: v.smallRatio,
          largeRatio: v.largeRatio,
          ...(w.ratio === undefined ? {} : { ratio: w.ratio }),
          ...(w.rate === null ? {} : { rate: w.rate }),
        }),
      ),
      working: [
        line(anode, range(w.anode)),
        line(cathode, range(w.cathode)),
        line(
          'Difference, at least',
          w.told
            ? `${formatNumber(metalOf(w.cathode).low)} − (${formatNumber(metalOf(w.anode).high)})`
            : 'ranges overlap',
          `${formatNumber(w.least)} mV`,
        ),
        line(
          'Difference, at most',
          `${formatNumber(metalOf(w.cathode).high)} − (${formatNumber(metalOf(w.anode).low)})`,
          `${formatNumber(w.greatest)} mV`,
        ),
        ...(w.ratio === undefined ? [] : [line('Areas', 'nobler / less noble', formatNumber(w.ratio, 3))]),
        ...(w.rate === null
          ? []
          : [
              line(
                'Eaten away',
                'i · (M/n) / (F · ρ)',
                `${formatNumber(w.density ?? 0, 3)} A/m²`,
                `${formatNumber(w.rate, 2)} mm a year`,
              ),
            ]),
      ],
    };
  },
  draw: (v) => [seriesDrawing(v.metalA, v.metalB)],
  cautions: [
    'A fitting eaten from inside may look sound: hammer, scrape bright and draw a fastening before trusting a through-hull fitting or keel bolt.',
    'Do not open a bonding or earthing connection to measure with shore power connected.',
    'Graphite and carbon fibre attack every metal of a boat but the noblest: insulate.',
  ],
  sources: [
    {
      citation: 'Galvanic series in flowing sea water against calomel, Australasian Corrosion Association',
      standing: 'secondary',
      note: 'titanium’s lower end is ASM Handbook vol. 13, the sign of the print being doubtful; charts differ by some 40 mV, for manganese bronze by more',
    },
    {
      citation: 'More than 200 mV apart causes trouble',
      standing: 'secondary',
      note: 'galvanic chart docslib 8174925; MIL-F-14072 takes 250 mV, others 150 mV in salt water',
    },
    {
      citation: 'MIL-STD-1250A, 5.6: attack goes with the ratio of cathode to anode area',
      standing: 'printed',
      note: 'the ratios 0.1 and 10 are common practice, no source',
    },
    {
      citation: `Faraday’s law; ${rateBands.join(', ')} mm a year as low, moderate, high`,
      standing: 'secondary',
      note: 'corrosion-doctors.org conversion; bands ascribed to NACE at metallurgyzone.com',
    },
  ],
});
