import { measured, number, said } from '../core/outputs.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { type Asked, inputs, problems } from './insulation-inputs.ts';
import { at40, leastPolarisationIndex, machineLimit, wiringLimit } from './insulation-limits.ts';
import { judgeBattery, judgeShore } from './leakage-current.ts';

const mega = (value: number) =>
  value >= 1 || value === 0 ? `${formatNumber(value)} MΩ` : `${formatNumber(value * 1000)} kΩ`;

/** Resistances in MΩ, voltages in V. The resistance compared is that at 40 °C for windings, as read for wiring. */
function work(v: Asked) {
  const volts = v.ratedVoltage.in('V');
  const limit = v.part === 'machine' ? machineLimit(volts, v.winding) : wiringLimit(volts);
  const least = v.leastResistance?.in('Mohm') ?? limit.least;
  const read = v.resistance?.in('Mohm') ?? null;
  const warmth = v.part === 'machine' ? v.temperature?.in('degC') : undefined;
  const compared = read === null ? null : warmth === undefined ? read : at40(read, warmth);
  const late = v.tenMinutes?.in('Mohm');
  const index = late === undefined || !read || v.beyondRange ? null : late / read;
  return { volts, limit, least, read, warmth, compared, index };
}

/** Why the reading can't be compared with the table, if it can't. */
function testFault(v: Asked, { limit }: ReturnType<typeof work>): Judgement | undefined {
  const test = v.testVoltage?.in('V') ?? 0;
  const [low, high] = limit.test;
  const wanted = low === high ? `${formatNumber(low)} V` : `${formatNumber(low)} to ${formatNumber(high)} V`;
  // With equipment that can't be disconnected a 500 V test may be made at 250 V; the resistance stays the same.
  const reduced = v.part === 'wiring' && low === 500 && test >= 250 && v.disconnected === 'no';
  if (test < low && !reduced) {
    const reason = `Tested at ${formatNumber(test)} V; the least resistance is given for ${wanted}. Repeat at that voltage.`;
    return { verdict: 'indeterminate', reason };
  }
  if (test > high) {
    const reason = `Tested at ${formatNumber(test)} V, above the ${wanted} the table asks for: equipment may have been stressed.`;
    return { verdict: 'attention', reason };
  }
  return undefined;
}

function judgeResistance(v: Asked, w: ReturnType<typeof work>): Judgement[] {
  if (w.compared === null) return [];
  const fault = testFault(v, w);
  const shown = `${v.beyondRange ? 'more than ' : ''}${mega(w.compared)}${w.warmth === undefined ? '' : ' at 40 °C'}`;
  const judgements = fault ? [fault] : [];
  if (fault?.verdict === 'indeterminate') return judgements;
  if (w.compared < w.least) {
    if (v.beyondRange) {
      const reason = `The tester’s range ends at ${mega(w.compared)}, below the ${mega(w.least)} that must be shown.`;
      return [...judgements, { verdict: 'indeterminate', reason }];
    }
    if (v.part === 'wiring' && v.disconnected !== 'yes') {
      const reason = `Insulation resistance is ${shown}, less than ${mega(w.least)}, but appliances may have been connected: disconnect them and repeat.`;
      return [...judgements, { verdict: 'indeterminate', reason }];
    }
    const reason = `Insulation resistance is ${shown}; at least ${mega(w.least)} is needed.`;
    return [...judgements, { verdict: 'unsatisfactory', reason }];
  }
  const further = v.lookFurther.in('Mohm');
  if (v.part === 'wiring' && w.volts > 50 && w.compared < further && !v.beyondRange) {
    const reason = `Insulation resistance is ${shown}: it passes ${mega(w.least)}, but below ${mega(further)} damp or damage should be looked for.`;
    return [...judgements, { verdict: 'attention', reason }];
  }
  const reason = `Insulation resistance is ${shown}; at least ${mega(w.least)} is needed.`;
  return [...judgements, { verdict: 'satisfactory', reason }];
}

function judgeIndex(v: Asked, { index }: ReturnType<typeof work>): Judgement[] {
  if (index === null) return [];
  const least = leastPolarisationIndex(v.insulationClass);
  const told = `The reading after 10 minutes is ${formatNumber(index, 3)} times that after 1 minute`;
  if (index >= least) {
    return [
      {
        verdict: 'satisfactory',
        reason: `${told}; at least ${least} is needed for class ${v.insulationClass}.`,
      },
    ];
  }
  const why =
    v.winding === 'random'
      ? `less than ${least}; on small random-wound machines that may mean nothing`
      : `less than the ${least} of class ${v.insulationClass}: damp or dirt is likely`;
  return [{ verdict: 'attention', reason: `${told}, ${why}.` }];
}

/** Insulation of wiring and windings, and leakage to water and earth. */
export const insulationResistance = defineWorksheet({
  kind: 'insulation-resistance',
  version: 1,
  title: 'Insulation resistance and leakage current',
  group: 'electrical',
  system: 'ac-electrical',
  purpose:
    'Judges the insulation of wiring and of motor and generator windings, and the current that leaks by the shore cord or from the battery.',
  inputs,
  refuse: problems,
  applicability:
    'Wiring up to 1 000 V and rotating machines. Readings depend on damp, dirt and temperature: note the weather, and compare with earlier readings.',
  outside: (v) =>
    v.part === 'wiring' && v.resistance && v.ratedVoltage.in('V') > 1000
      ? 'The table of test voltages and least resistances ends at 1 000 V for wiring.'
      : undefined,
  compute: (v) => {
    const w = work(v);
    const test = v.testVoltage?.in('V');
    const [low, high] = w.limit.test;
    return {
      outputs: {
        compared: measured(v.part === 'machine' ? 'Resistance at 40 °C' : 'Resistance', w.compared, 'Mohm', {
          digits: 4,
        }),
        least: measured('Least resistance', w.least, 'Mohm'),
        testVoltage: said('Test voltage asked for', low === high ? `${low} V` : `${low} to ${high} V`),
        leakageAtRated: measured(
          'Leakage through this insulation at the nominal voltage',
          w.read ? w.volts / w.read : null,
          'uA',
        ),
        polarisationIndex: number('Polarisation index', w.index),
        shoreLeakage: measured('Leakage of the shore cord', v.shoreLeakage?.in('mA') ?? null, 'mA'),
        batteryLeakage: measured('Leakage from the battery', v.batteryLeakage?.in('mA') ?? null, 'mA'),
      },
      ...conclude([...judgeResistance(v, w), ...judgeIndex(v, w), ...judgeShore(v), ...judgeBattery(v)]),
      working: [
        ...(w.read === null || w.compared === null
          ? []
          : [
              line('Reading', `${v.beyondRange ? '> ' : ''}${mega(w.read)} at ${formatNumber(test ?? 0)} V`),
              ...(w.warmth === undefined
                ? []
                : [
                    line(
                      'At 40 °C',
                      'R · 0.5^((40 − T)/10)',
                      `${formatNumber(w.read)} × 0.5^((40 − ${formatNumber(w.warmth)})/10)`,
                      mega(w.compared),
                    ),
                  ]),
              v.part === 'machine' && v.winding === 'older' && !v.leastResistance
                ? line('Least', 'kV + 1', `${formatNumber(w.volts / 1000)} + 1`, mega(w.least))
                : line('Least', mega(w.least)),
              ...(w.read > 0
                ? [
                    line(
                      'Leakage at the nominal voltage',
                      'V / R',
                      `${formatNumber(w.volts)} V / ${mega(w.read)}`,
                      `${formatNumber(w.volts / w.read, 3)} µA`,
                    ),
                  ]
                : []),
            ]),
        ...(w.index === null ? [] : [line('Polarisation index', 'R₁₀ / R₁', `${formatNumber(w.index, 3)}`)]),
        ...(v.shoreLeakage ? [line('Shore cord', v.shoreLeakage.text())] : []),
        ...(v.batteryLeakage ? [line('Battery', v.batteryLeakage.text())] : []),
      ],
    };
  },
  cautions: [
    'The tester gives 250 to 1 000 V: prove the circuit dead, keep people off it, and discharge it afterwards. It destroys electronics, dimmers and surge protectors left connected.',
    'Leakage into the water can paralyse and drown a swimmer, most of all in fresh water: keep people out of the water, and measure from the dock.',
    'AC work is for a licensed electrician, by the local code.',
  ],
  sources: [
    {
      citation: 'BS 7671, table 64 (regulation 643.3.2): 0.5 MΩ at 250 V, 1 MΩ at 500 V, 1 MΩ at 1 000 V',
      standing: 'secondary',
      note: 'a rule for buildings, taken as a yardstick for boats; 250 V allowed with equipment connected',
    },
    {
      citation: 'Wiring: look further below 2 MΩ',
      standing: 'secondary',
      note: 'guidance for inspectors of buildings',
    },
    {
      citation:
        'IEEE 43: kV + 1 MΩ at 40 °C, test voltages, R₄₀ = R·0.5^((40 − T)/10), polarisation index 1.5 and 2.0',
      standing: 'secondary',
      note: 'as reprinted in makers’ manuals',
    },
    {
      citation: 'IEEE 43-2013: 5 MΩ random-wound or below 1 kV, 100 MΩ form-wound',
      standing: 'memory',
      note: 'which machines each is for is from memory; the change from 100 to 5 MΩ was seen reported',
    },
    {
      citation: 'NEC 555.35 and ABYC E-11: ground-fault protection of not more than 30 mA',
      standing: 'secondary',
    },
    {
      citation: 'Battery leakage: under 1 mA clean, a few mA to be found and corrected',
      standing: 'secondary',
      note: 'ab-marine.com knowledge base; that it must not wait from 100 mA is common practice, no source',
    },
    {
      citation: 'A 30 mA device may trip from half its rating',
      standing: 'memory',
      note: 'value from memory',
    },
  ],
});
