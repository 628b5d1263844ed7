import { chart } from '../../drawing/chart.ts';
import { measured, number, said } from '../core/outputs.ts';
import { conclude } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { type Asked, inputs, problems } from './anode-inputs.ts';
import { judgeAnodes } from './anode-judge.ts';
import { workAnodes } from './anode-work.ts';
import { writeAnodes } from './anode-working.ts';

/** Wasting against time, drawn on to when they are due. */
function drawWasting(v: Asked) {
  const { wear } = workAnodes(v);
  if (!wear?.months) return [];
  const { wasted, months, renewAt, timeLeft } = wear;
  const next = months + v.untilNext.in('month');
  const due = timeLeft === null ? null : months + timeLeft;
  const rate = wasted / months;
  const end = Math.min(next, rate > 0 ? 100 / rate : next);
  return [
    chart({
      key: 'wasting',
      title: 'Wasting of the anodes against time',
      description: `${formatNumber(wasted, 3)}% wasted in ${formatNumber(months, 3)} months; ${due === null ? 'when they are due can’t be told' : `due after ${formatNumber(due, 3)} months`}.`,
      x: { label: 'Months since fitted', fromZero: true },
      y: { label: 'Wasted, %', domain: [0, 100] },
      height: 240,
      limits: [
        { axis: 'y', at: renewAt, words: 'renew' },
        { axis: 'x', at: next, words: 'next haul-out' },
      ],
      series: [
        {
          kind: 'line',
          points: [
            [0, 0],
            [months, wasted],
          ],
        },
        {
          kind: 'dashed',
          points: [
            [months, wasted],
            [end, rate * end],
          ],
        },
        { kind: 'points', points: [[months, wasted]], strong: wasted >= renewAt },
      ],
      notes: [{ at: [months, wasted], words: 'found', side: 'left' }],
    }),
  ];
}

/** How long sacrificial anodes last, and whether they are enough. */
export const anodeLife = defineWorksheet({
  kind: 'anode-life',
  version: 1,
  title: 'Life of sacrificial anodes',
  group: 'corrosion',
  system: 'corrosion-protection',
  purpose:
    'Tells when anodes will be due for renewal from what is wasted, and whether their alloy and their current are enough for what they protect.',
  inputs,
  refuse: problems,
  applicability:
    'Sacrificial anodes in sea water. The resistances hold for anodes free of fouling and paint and not crowded; boat hulls are often anoded by experience, and a potential reading decides.',
  compute: (v) => {
    const w = workAnodes(v);
    return {
      outputs: {
        demandInitial: measured('Current needed at first', w.demand?.initial ?? null, 'A', { digits: 4 }),
        demandMean: measured('Current needed, mean', w.demand?.mean ?? null, 'A', { digits: 4 }),
        demandFinal: measured('Current needed at the end', w.demand?.final ?? null, 'A', { digits: 4 }),
        massFitted: measured('Alloy fitted, new', w.fitted, 'kg', { also: 'lb' }),
        massLeft: measured('Alloy left', w.wear ? w.fitted * (1 - w.wear.wasted / 100) : null, 'kg', {
          also: 'lb',
        }),
        massNeeded: measured('Alloy needed for the life wanted', w.need?.mass ?? null, 'kg', {
          digits: 4,
          also: 'lb',
        }),
        lifeAtDemand: measured('Life left at that current', w.need?.monthsLeft ?? null, 'month'),
        currentGiven: measured('Mean current given so far', w.wear?.current ?? null, 'mA'),
        timeLeft: measured('Time until renewal is due', w.wear?.timeLeft ?? null, 'month'),
        timeLeftAtLeast: measured('At least', w.wear?.timeLeftAtLeast ?? null, 'month'),
        resistance: measured('Resistance of one anode, new', w.output?.resistance ?? null, 'ohm'),
        current: measured('Current of one anode, new', w.output?.current ?? null, 'A', { digits: 4 }),
        resistanceAtEnd: measured('Resistance at its end', w.output?.resistanceAtEnd ?? null, 'ohm'),
        currentAtEnd: measured('Current at its end', w.output?.currentAtEnd ?? null, 'A', { digits: 4 }),
        anodesForMass: number('Anodes needed for their alloy', w.numbers?.mass ?? null, 4),
        anodesAtFirst: number('Anodes needed for the current at first', w.numbers?.initial ?? null, 4),
        anodesAtEnd: number('Anodes needed for the current at the end', w.numbers?.final ?? null, 4),
        governs: said('What decides their number', w.numbers?.governs ?? null),
      },
      ...conclude(judgeAnodes(v, w)),
      working: writeAnodes(v, w),
    };
  },
  draw: drawWasting,
  cautions: [
    'Never paint an anode or mount it on paint: it must touch bare metal. An anode that does not waste protects nothing.',
    'Magnesium over-protects aluminium and wooden boats in salt water. Mixing alloys on one boat makes the nobler ones useless.',
    'More anodes are no cure for stray current: where they vanish within weeks, a corrosion specialist should look first.',
  ],
  sources: [
    {
      citation: 'DNV-RP-B401: demand, breakdown of coating, alloy needed, table 10-7 of anode resistances',
      standing: 'secondary',
      note: 'equations as coded and commented in a public repository (vamseeachanta/digitalmodel); the standard was not seen',
    },
    {
      citation:
        'Capacity 2 000 A·h/kg and −1.05 V for aluminium, 780 A·h/kg for zinc; use 0.90 long slender, 0.85 long flush, 0.80 bracelet',
      standing: 'secondary',
      note: 'design reports using DNV-RP-B401',
    },
    {
      citation: 'Zinc −1.00 V; use 0.85 short slender, 0.80 short flush',
      standing: 'memory',
      note: 'value from memory',
    },
    {
      citation: 'MIL-HDBK-1004/10, pp. 186, 198 and 209: W = Y·S·I/E, magnesium 8.8 lb/A·yr at 0.50',
      standing: 'printed',
      note: 'some 1 100 A·h/kg for magnesium',
    },
    {
      citation: 'Renewal when half is wasted; wasting taken as even in time',
      standing: 'practice',
      note: 'common practice, no source',
    },
  ],
});
