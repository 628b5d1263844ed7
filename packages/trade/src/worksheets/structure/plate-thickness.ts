import { strips } from '../../drawing/strips.ts';
import { measured, number, said } from '../core/outputs.ts';
import { settle } from '../core/units.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { type Computed, defineWorksheet, type Values } from '../core/worksheet.ts';
import { plateInputs, plateProblems } from './plate-inputs.ts';
import { type JudgedPlate, judgePlate, type PlateLimits } from './plate-judgement.ts';
import { plateTables } from './plate-tables.ts';

const mostReasons = 24;
const mostDrawn = 50;

interface Found extends Computed {
  plates: JudgedPlate[];
}

const limitsOf = (v: Values<typeof plateInputs>): PlateLimits => ({
  renewalLoss: v.renewalLoss.in('%'),
  localLoss: v.localLoss.in('%'),
  substantialShare: v.substantialShare.in('%'),
  leastThickness: v.leastThickness?.in('mm'),
  leftUnderPit: v.leftUnderPit.in('%'),
  pittedShare: v.pittedShare.in('%'),
  readingsPerPlate: v.readingsPerPlate,
  allowance: v.allowance.in('mm'),
  gaugeStep: v.gaugeStep.in('mm'),
});

function gauged(v: Values<typeof plateInputs>): JudgedPlate[] {
  const limits = limitsOf(v);
  const readings = new Map<string, number[]>();
  for (const { plate, thickness } of v.readings) {
    const mm = thickness.in('mm');
    const earlier = readings.get(plate);
    if (earlier) earlier.push(mm);
    else readings.set(plate, [mm]);
  }
  return v.plates.map(({ plate, original, pitDepth, pitted }) =>
    judgePlate(
      {
        name: plate,
        original: original.in('mm'),
        pitDepth: pitDepth?.in('mm'),
        pitted: pitted?.in('%'),
        readings: readings.get(plate) ?? [],
      },
      limits,
    ),
  );
}

/** The plate of which something is greatest, if any has it. */
function greatest(plates: readonly JudgedPlate[], of: (plate: JudgedPlate) => number | undefined) {
  let found: { plate: JudgedPlate; value: number } | undefined;
  for (const plate of plates) {
    const value = of(plate);
    if (value !== undefined && (!found || value > found.value)) found = { plate, value };
  }
  return found;
}

function wellReason(plates: readonly JudgedPlate[], limits: PlateLimits): Judgement {
  const worst = greatest(plates, (plate) => plate.meanLoss);
  const reason = `No plate calls for attention: the greatest mean loss is ${formatNumber(worst?.value ?? 0, 3)}% (plate ${worst?.plate.name}), and ${formatNumber(limits.renewalLoss, 3)}% is allowed.`;
  return { verdict: 'satisfactory', reason };
}

function workingOf(plates: readonly JudgedPlate[], limits: PlateLimits): string[] {
  const worst = greatest(plates, (plate) => plate.meanLoss)?.plate;
  const f = (value: number) => formatNumber(value, 4);
  if (!worst?.statistics) return [line('No usable reading', 'nothing to work out')];
  const { statistics, original } = worst;
  return [
    line(
      `Mean of plate ${worst.name}, the most wasted`,
      'Σt / n',
      `${f(statistics.mean * statistics.count)} / ${statistics.count}`,
      `${f(statistics.mean)} mm`,
    ),
    line(
      'Its mean loss',
      '100 (t₀ − t) / t₀',
      `100 × (${f(original)} − ${f(statistics.mean)}) / ${f(original)}`,
      `${f(worst.meanLoss ?? 0)}%`,
    ),
    line(
      'Its renewal thickness',
      't₀ (1 − limit)',
      `${f(original)} × (1 − ${f(limits.renewalLoss / 100)})`,
      `${f(original * (1 - limits.renewalLoss / 100))} mm`,
    ),
    ...plates
      .filter((plate) => plate.underPit !== undefined)
      .slice(0, 10)
      .map((plate) =>
        line(
          `Left under the deepest pit of plate ${plate.name}`,
          'least reading − depth',
          `${f(plate.statistics?.least ?? 0)} − ${f(plate.pitDepth ?? 0)}`,
          `${f(plate.underPit ?? 0)} mm`,
        ),
      ),
  ];
}

function compute(v: Values<typeof plateInputs>): Found {
  const limits = limitsOf(v);
  const plates = gauged(v);
  const judgements = plates.flatMap((plate) => plate.judgements);
  const { verdict, reasons } = conclude(judgements.length > 0 ? judgements : [wellReason(plates, limits)]);
  const more = reasons.length - mostReasons;
  const worst = greatest(plates, (plate) => plate.meanLoss);
  const losses = plates.flatMap((plate) => plate.meanLoss ?? []);
  const thinnest = greatest(plates, (plate) => plate.statistics && -plate.statistics.least);
  const underPit = greatest(plates, (plate) => (plate.underPit === undefined ? undefined : -plate.underPit));
  const usable = plates.reduce((sum, plate) => sum + plate.usable.length, 0);
  return {
    plates,
    outputs: {
      plates: number('Plates', plates.length),
      readings: number('Readings used', usable),
      doubtfulReadings: number('Doubtful readings left out', v.readings.length - usable),
      renewals: number('Plates to be renewed or repaired', plates.filter((p) => p.work.length > 0).length),
      worstPlate: said('Most wasted plate', worst?.plate.name ?? null),
      worstMean: measured('Its mean thickness', worst?.plate.statistics?.mean ?? null, 'mm', { also: 'in' }),
      worstDeviation: measured(
        'Standard deviation of its readings',
        worst?.plate.statistics?.deviation ?? null,
        'mm',
      ),
      worstMeanLoss: measured('Its mean loss', worst?.value ?? null, '%'),
      greatestLoss: measured(
        'Greatest loss at one reading',
        greatest(plates, (p) => p.greatestLoss)?.value ?? null,
        '%',
      ),
      meanLoss: measured(
        'Mean loss over all plates',
        losses.length > 0 ? losses.reduce((sum, loss) => sum + loss, 0) / losses.length : null,
        '%',
      ),
      leastThickness: measured('Thinnest reading', thinnest ? -thinnest.value : null, 'mm', { also: 'in' }),
      leastUnderPit: measured('Least left under a pit', underPit ? -underPit.value : null, 'mm', {
        also: 'in',
      }),
      leastUnderPitShare: measured(
        'Of its original thickness',
        underPit ? settle((-100 * underPit.value) / underPit.plate.original) : null,
        '%',
      ),
    },
    verdict,
    reasons: more > 0 ? [...reasons.slice(0, mostReasons), `And ${more} more; see the tables.`] : reasons,
    working: workingOf(plates, limits),
    tables: plateTables(plates),
  };
}

/** Ultrasonic thickness of metal plating, plate by plate, against the thickness it was built with. */
export const plateThickness = defineWorksheet({
  kind: 'plate-thickness',
  version: 1,
  title: 'Plate thickness',
  group: 'structure',
  system: 'hull',
  purpose:
    'Tells from ultrasonic readings how much each plate has lost of its original thickness, which plates pass the limits, and what pits leave.',
  inputs: plateInputs,
  refuse: plateProblems,
  applicability:
    'Metal plating whose original thickness is known. Limits are a firm’s choice: those of class and flag for this vessel, her construction and the place of the plate govern, and longitudinal strength is not judged here.',
  compute,
  draw: (v, { plates }) => {
    const limits = limitsOf(v);
    const shown =
      plates.length > mostDrawn
        ? [...plates].sort((a, b) => (b.meanLoss ?? 0) - (a.meanLoss ?? 0)).slice(0, mostDrawn)
        : plates;
    return [
      strips({
        key: 'thickness',
        title:
          shown.length < plates.length
            ? `Thickness of the ${mostDrawn} most wasted plates`
            : 'Thickness by plate',
        description: shown
          .slice(0, 20)
          .map(
            (plate) =>
              `${plate.name}: ${plate.meanLoss === undefined ? 'no usable reading' : `mean loss ${formatNumber(plate.meanLoss, 3)}%`}`,
          )
          .join('; '),
        axis: 'Thickness, mm; each strip as long as the plate was thick when new',
        marks: {
          value: 'reading',
          mean: 'mean',
          limit: `${formatNumber(limits.renewalLoss, 3)}% lost`,
          doubtful: 'doubtful, left out',
          bottom: 'left under the deepest pit',
        },
        strips: shown.map((plate) => ({
          name: plate.name.length > 14 ? `${plate.name.slice(0, 13)}…` : plate.name,
          whole: plate.original,
          limit: plate.original * (1 - limits.renewalLoss / 100),
          values: plate.usable,
          mean: plate.statistics?.mean,
          doubtful: plate.doubtful.map((doubt) => doubt.reading),
          bottom: plate.underPit,
          words:
            plate.meanLoss === undefined
              ? 'not determined'
              : `−${formatNumber(plate.meanLoss, 3)}%${plate.work.length > 0 ? ', listed' : ''}`,
          grave: plate.work.length > 0,
        })),
      }),
    ];
  },
  cautions: [
    'Calibrate on a step wedge of the same metal and check against a drilled or accessible edge; paint, filler and scale must be off or the gauge must read echo to echo.',
    'Readings are points: the thinnest place lies between them. Sound the plating, and gauge closer where it is wet inside: bilges, behind linings, waterline, under ballast.',
    'Don’t hammer or grind plating that may be near holing while the boat is afloat. Repairs of the shell are for a qualified welder to an approved plan: insert plates as original; doublers are no permanent repair of the hull girder.',
  ],
  sources: [
    {
      citation: 'US Army TB 55-1900-201-45/1, chapter 2 and appendix E (NVIC 7-68 notes)',
      standing: 'printed',
      note: 'loss in per cent of original; 25 % local is a flag and no verdict; 15 % for hulls built lighter than rule',
    },
    {
      citation: 'IIMS president’s note on inland steel craft: class and MCA rules about 20 %',
      standing: 'secondary',
      note: 'the same note prints 70 % as 2 mm of 6 mm, which is 67 %',
    },
    {
      citation: '2011 ESP Code, resolution A.1049(27), annex A part B, 8.2',
      standing: 'secondary',
      note: 'bulk carriers under Common Structural Rules: more than 70 % left under pits of the side shell; above 15 % pitted the deepest pits are measured. For boats a yardstick only',
    },
    {
      citation: 'IMO and class definition of substantial corrosion: beyond 75 % of the allowable margin',
      standing: 'secondary',
    },
    {
      citation: 'Class naval survey guidance for steel ships, pitting 1.1.5',
      standing: 'secondary',
      note: 'over 25 % of the surface with pits deeper than half the thickness: renew',
    },
    {
      citation: 'MSC guidance to A.744: at least two readings on each deck and bottom plate',
      standing: 'secondary',
    },
    {
      citation: 'Excess of 0.3 mm over the original put down to rolling; doubtful readings left out',
      standing: 'practice',
      note: 'common practice, no source',
    },
  ],
});
