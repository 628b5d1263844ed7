import { measured, number, type Output, type ResultTable } from '../core/outputs.ts';
import { Quantity } from '../core/quantity.ts';
import { conclude } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type InputProblem } from '../core/worksheet.ts';
import { clearanceTables } from './bearing-clearance-table.ts';
import { drawWornSection } from './shaft-wear-drawing.ts';
import { type ShaftWearValues, shaftWearInputs } from './shaft-wear-inputs.ts';
import { judgeShaftWear, lengthText, standing } from './shaft-wear-judgement.ts';
import { type ShaftWearMeasures, shaftWearMeasures } from './shaft-wear-measures.ts';
import { inInches } from './shafting.ts';

function refuse(v: ShaftWearValues): InputProblem[] {
  const problems: InputProblem[] = [];
  if (v.wornDiameter.in('mm') - v.originalDiameter.in('mm') > v.resolution.in('mm')) {
    problems.push({
      field: 'wornDiameter',
      message: `The worn diameter of ${v.wornDiameter.text(6)} is larger than the ${v.originalDiameter.text(6)} as new.`,
    });
  }
  if (v.play && v.play.in('mm') > v.originalDiameter.in('mm')) {
    problems.push({ field: 'play', message: 'The play can’t be more than the shaft’s diameter.' });
  }
  if (v.clearanceTable === 'own' && v.play && !v.ownLimit) {
    problems.push({
      field: 'ownLimit',
      message: 'Give the play at which to renew, or choose a table to judge by.',
    });
  }
  if ((v.power === undefined) !== (v.shaftSpeed === undefined)) {
    problems.push({
      field: v.power ? 'shaftSpeed' : 'power',
      message: 'Give the power and the shaft’s speed at that power, or leave both out.',
    });
  }
  if (v.renewBelow.in('%') > v.attentionBelow.in('%')) {
    problems.push({
      field: 'renewBelow',
      message: `The renewal limit can’t be above the ${v.attentionBelow.text()} at which attention begins.`,
    });
  }
  return problems;
}

function outputsOf(m: ShaftWearMeasures): Record<string, Output> {
  const told = (value: number) => (m.even ? value : null);
  const length = { digits: 3, also: 'in' } as const;
  const { stress } = m;
  const factor = stress?.yieldStrength === undefined ? null : stress.yieldStrength / stress.now;
  return {
    diameterLost: measured('Diameter lost', m.lost, 'mm', length),
    diameterLostShare: measured('Diameter lost, of the diameter as new', m.lostShare, '%'),
    strengthLeft: measured('Torsional strength left', told(m.strength), '%'),
    stiffnessLeft: measured('Stiffness left', told(m.stiffness), '%'),
    torque: measured('Rated torque', stress?.torque ?? null, 'N m', { digits: 4, also: 'lbf ft' }),
    stressAsNew: measured('Shear stress as new', stress?.asNew ?? null, 'MPa', { also: 'psi' }),
    stressNow: measured('Shear stress now', stress ? told(stress.now) : null, 'MPa', { also: 'psi' }),
    factorNow: number('Factor of safety now', factor === null ? null : told(factor)),
    playShare: measured('Play, of the diameter', m.playShare ?? null, '%'),
    newLeast: measured('New bearing, least clearance', m.chosen.newLeast ?? null, 'mm', length),
    newMost: measured('New bearing, greatest clearance', m.chosen.newMost ?? null, 'mm', length),
    limit: measured('Play at which to renew', m.chosen.limit ?? null, 'mm', length),
    overLimit: measured(
      'Play over that limit',
      m.play === undefined || m.chosen.limit === undefined ? null : Math.max(0, m.play - m.chosen.limit),
      'mm',
      length,
    ),
    bearingShare: measured('Play that is in the bearing', m.bearingShare ?? null, 'mm', length),
    playWithNewBearing: measured('Play with a new bearing on this shaft', m.renewedLeast, 'mm', length),
  };
}

const standingWords = {
  'not-covered': 'does not tell',
  tight: 'too tight',
  within: 'within',
  over: 'over',
} as const;

function comparison(v: ShaftWearValues, m: ShaftWearMeasures): ResultTable[] {
  const { play } = m;
  const text = (value: number | undefined) => (value === undefined ? '–' : lengthText(v, value));
  return [
    {
      title: 'What each table says for this shaft',
      columns: ['Table', 'New, least', 'New, most', 'Renew at', 'This play'],
      rows: m.tables.map((t) => [
        t.words,
        text(t.newLeast),
        text(t.newMost),
        text(t.limit),
        play === undefined ? '–' : standingWords[standing(t, play)],
      ]),
    },
  ];
}

function workingOf(v: ShaftWearValues, m: ShaftWearMeasures): string[] {
  const unit = v.wornDiameter.unit;
  const d0 = formatNumber(v.originalDiameter.in(unit), 6);
  const d = formatNumber(v.wornDiameter.in(unit), 6);
  const f = (value: number) => formatNumber(value, 4);
  const lines = [line('Diameter lost', 'd₀ − d', `${d0} − ${d}`, lengthText(v, m.lost))];
  if (m.even) {
    lines.push(
      line('Strength left', '(d / d₀)³', `(${d} / ${d0})³`, `${f(m.strength)}%`),
      line('Stiffness left', '(d / d₀)⁴', `(${d} / ${d0})⁴`, `${f(m.stiffness)}%`),
    );
  }
  if (m.stress && v.power && v.shaftSpeed && m.even) {
    const { torque, now, yieldStrength } = m.stress;
    const rpm = f(v.shaftSpeed.in('rpm'));
    if (inInches(unit)) {
      const lbfIn = new Quantity(torque, 'N m').in('lbf in');
      const psi = new Quantity(now, 'MPa').in('psi');
      lines.push(
        line(
          'Torque',
          'T = 63,025 · hp / N',
          `63,025 × ${f(v.power.in('hp'))} / ${rpm}`,
          `${f(lbfIn)} lbf·in`,
        ),
        line(
          'Stress now',
          '16 T / (π d³)',
          `16 × ${f(lbfIn)} / (π × ${formatNumber(v.wornDiameter.in('in'), 5)}³)`,
          `${f(psi)} psi`,
        ),
      );
    } else {
      lines.push(
        line('Torque', 'T = 9,549 · kW / N', `9,549 × ${f(v.power.in('kW'))} / ${rpm}`, `${f(torque)} N·m`),
        line(
          'Stress now',
          '16 T / (π d³)',
          `16 × ${f(torque)} × 1000 / (π × ${formatNumber(v.wornDiameter.in('mm'), 5)}³)`,
          `${f(now)} MPa`,
        ),
      );
    }
    if (yieldStrength !== undefined)
      lines.push(
        line('Factor now', 'yield / stress', `${f(yieldStrength)} / ${f(now)}`, f(yieldStrength / now)),
      );
  }
  if (m.play !== undefined) {
    lines.push(
      line(
        'Play, of the diameter',
        'play / d₀',
        `${lengthText(v, m.play)} / ${d0}`,
        `${f(m.playShare ?? 0)}%`,
      ),
      line(
        'Limit by the table chosen',
        m.chosen.limit === undefined ? 'none' : lengthText(v, m.chosen.limit),
      ),
    );
  }
  if (v.place === 'bearing') {
    lines.push(
      line(
        'Play with a new bearing on this shaft',
        'new clearance + diameter lost',
        `${lengthText(v, m.chosen.newLeast ?? 0)} + ${lengthText(v, m.lost)}`,
        lengthText(v, m.renewedLeast),
      ),
    );
  }
  return lines;
}

/** Diameter lost by a propeller shaft, what strength and stiffness that leaves, and the play in its bearing. */
export const shaftWear = defineWorksheet({
  kind: 'shaft-wear',
  version: 1,
  title: 'Shaft and bearing wear',
  group: 'propulsion',
  system: 'shaft-propeller',
  purpose:
    'Tells how much strength a worn propeller shaft has left, whether the play in its bearing is within the limits chosen, and what a new bearing alone would cure.',
  inputs: shaftWearInputs,
  refuse,
  applicability:
    'Solid round shafts worn evenly, in elastic torsion; water-lubricated bearings. Not for pitted or cracked shafts, hollow or sleeved ones, or oil-lubricated bearings.',
  compute: (v) => {
    const m = shaftWearMeasures(v);
    return {
      outputs: outputsOf(m),
      tables: comparison(v, m),
      ...conclude(judgeShaftWear(v, m)),
      working: workingOf(v, m),
    };
  },
  draw: (v, result) => {
    const m = shaftWearMeasures(v);
    return [
      drawWornSection({
        shaft: v.wornDiameter.in('mm'),
        lost: m.lost,
        ...(m.play === undefined ? {} : { play: m.play }),
        words: {
          shaft: `shaft now ${v.wornDiameter.text(5)}`,
          asNew: `as new ${v.originalDiameter.text(5)} (dashed)`,
          lost: m.shows ? `lost ${lengthText(v, m.lost)}` : 'no wear that shows',
          play: m.play === undefined ? 'play not taken' : `play ${lengthText(v, m.play)}`,
        },
        strong: result.verdict === 'unsatisfactory',
      }),
    ];
  },
  cautions: [
    'Isolate the engine and secure the shaft against turning before measuring. Never work near a propeller that can turn.',
    'A new bearing on a worn shaft does not cure it: the wear stays in the shaft and the new bearing wears out early.',
    'Crevice corrosion under bearings, seals and hubs can part a stainless shaft that measures full size. A shaft in doubt is drawn and crack-tested by a qualified workshop, and the bearing maker’s limits come first.',
  ],
  sources: [
    {
      citation: 'Elastic torsion of a solid round shaft: τ = 16 T / (π d³), strength as d³, stiffness as d⁴',
      standing: 'secondary',
      note: 'Westlawn Masthead 18 p. 15 for the torque and diameter formulas; the ratios follow from it',
    },
    ...Object.values(clearanceTables).map((table) => table.source),
    {
      citation: 'Yield in torsional shear by shaft material',
      standing: 'secondary',
      note: 'trade figures at electricboats.co.uk and speedafloat.com; factor of safety 3 for average yachts, Gerr, Boat Mechanical Systems Handbook p. 10',
    },
    {
      citation: 'Attention below 95% and renewal below 90% of strength left',
      standing: 'practice',
      note: 'common practice, no source; the firm may set its own',
    },
  ],
});
