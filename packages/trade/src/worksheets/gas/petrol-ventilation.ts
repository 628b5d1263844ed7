import { chart } from '../../drawing/chart.ts';
import { choice, fallback, measure, optional } from '../core/fields.ts';
import { measured, yes } from '../core/outputs.ts';
import { withUnit } from '../core/quantity.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { formatNumber, line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';
import { judgePoints, toCheck } from './checked-points.ts';
import { limitText } from './limit-text.ts';
import {
  netVolume,
  openArea,
  openLine,
  openSource,
  openToAtmosphere,
  petrolCautions,
  volumeLine,
} from './petrol-compartment.ts';

const flow = { unit: 'cfm', units: ['m3/h', 'L/min', 'L/s'], min: 0, max: 20_000 } as const;

const inputs = {
  engine: choice({
    label: 'Engine in the compartment',
    choices: {
      'petrol-starter': 'Petrol, with an electric starter',
      'petrol-no-starter': 'Petrol, started by hand only',
      other: 'Diesel or electric only',
    },
  }),
  netVolume,
  openArea,
  ratedCapacity: measure({
    label: 'Rated capacity of the blowers',
    help: 'From their labels, the sum of all that exhaust; 0 if there is none',
    ...flow,
  }),
  measuredOutput: optional(
    measure({
      label: 'Output measured',
      help: 'Mean air speed at the outlet by its free area, all blowers running and the engine stopped',
      ...flow,
    }),
  ),
  flowAccuracy: fallback(
    measure({
      label: 'Accuracy of the flow measurement',
      help: 'Of the reading, from the instrument’s certificate and the way it was held',
      unit: '%',
      min: 0,
      max: 50,
    }),
    10,
  ),
  intakeLow: toCheck({ label: 'Blower intakes in the lower third of the compartment' }),
  intakeAboveBilge: toCheck({ label: 'Blower intakes above the normal bilge water' }),
  label: toCheck({
    label: 'Warning label at each ignition switch',
    help: 'Run the blower for 4 minutes and check for vapour before starting',
  }),
};

type Given = Values<typeof inputs>;

/**
 * 33 CFR 183.610, table: the least rated capacity of the blowers and the least output of the system, ft³/min.
 * Not rounded; steps up at 34 ft³, joins at 100 ft³.
 * @param volume net volume, ft³
 */
export function blowerNeeds(volume: number): { rated: number; output: number } {
  if (volume < 34) return { rated: 50, output: 20 };
  if (volume <= 100) return { rated: 1.5 * volume, output: 0.6 * volume };
  return { rated: volume / 2 + 100, output: 0.2 * volume + 40 };
}

const cfm = (value: number) => withUnit(formatNumber(value), 'cfm');

function needLines(volume: number): string[] {
  const needs = blowerNeeds(volume);
  const v = formatNumber(volume);
  const [rated, output] =
    volume < 34
      ? [['for less than 34 ft³'], ['for less than 34 ft³']]
      : volume <= 100
        ? [
            ['1.5 V', `1.5 × ${v}`],
            ['0.6 V', `0.6 × ${v}`],
          ]
        : [
            ['V/2 + 100', `${v}/2 + 100`],
            ['0.2 V + 40', `0.2 × ${v} + 40`],
          ];
  return [
    line('Rated capacity required', ...rated, cfm(needs.rated)),
    line('Output required', ...output, cfm(needs.output)),
  ];
}

function judgeFlow(v: Given): Judgement[] {
  const needs = blowerNeeds(v.netVolume.in('ft3'));
  const judgements: Judgement[] = [];
  const rated = v.ratedCapacity.in('cfm');
  if (rated === 0) {
    return [
      {
        verdict: 'unsatisfactory',
        reason: `There is no exhaust blower; blowers rated at ${limitText(needs.rated, 'cfm', v.ratedCapacity)} or more in all are required.`,
      },
    ];
  }
  judgements.push(
    rated >= needs.rated
      ? {
          verdict: 'satisfactory',
          reason: `The blowers are rated at ${v.ratedCapacity.text()}; at least ${limitText(needs.rated, 'cfm', v.ratedCapacity)} is required.`,
        }
      : {
          verdict: 'unsatisfactory',
          reason: `The blowers are rated at ${v.ratedCapacity.text()}, less than the ${limitText(needs.rated, 'cfm', v.ratedCapacity)} required.`,
        },
  );
  const output = v.measuredOutput?.in('cfm');
  if (output === undefined || !v.measuredOutput) {
    const reason = `The system’s output was not measured; at least ${limitText(needs.output, 'cfm', v.ratedCapacity)} must leave the boat with the engine stopped.`;
    judgements.push({ verdict: 'indeterminate', reason });
    return judgements;
  }
  const doubt = v.flowAccuracy.in('%') / 100;
  const said = v.measuredOutput.text();
  if (output < needs.output) {
    const reason = `The system moves ${said}, less than the ${limitText(needs.output, 'cfm', v.measuredOutput)} required.`;
    judgements.push({ verdict: 'unsatisfactory', reason });
  } else if (output * (1 - doubt) < needs.output) {
    const reason = `The system moves ${said}, no more above the ${limitText(needs.output, 'cfm', v.measuredOutput)} required than the measurement may be wrong by (${v.flowAccuracy.text()}).`;
    judgements.push({ verdict: 'attention', reason });
  } else {
    const reason = `The system moves ${said}; at least ${limitText(needs.output, 'cfm', v.measuredOutput)} is required.`;
    judgements.push({ verdict: 'satisfactory', reason });
  }
  if (output * (1 - doubt) > rated) {
    const reason = `More was measured than the blowers are rated for: check the measurement and the labels.`;
    judgements.push({ verdict: 'attention', reason });
  }
  return judgements;
}

function drawNeeds(v: Given) {
  const volume = v.netVolume.in('ft3');
  const needs = blowerNeeds(volume);
  const rated = v.ratedCapacity.in('cfm');
  const output = v.measuredOutput?.in('cfm');
  const far = Math.max(120, volume * 1.25);
  const curve = (of: 'rated' | 'output') =>
    [0, 33.999, 34, 100, far].map((x): [number, number] => [x, blowerNeeds(x)[of]]);
  return chart({
    key: 'blowers',
    title: 'Blower capacity and output against volume',
    description: `At ${formatNumber(volume)} ft³: ${cfm(needs.rated)} rated and ${cfm(needs.output)} output required; rated ${cfm(rated)}, ${
      output === undefined ? 'output not measured' : `measured ${cfm(output)}`
    }.`,
    x: { label: 'Net volume, ft³', domain: [0, far] },
    y: { label: 'Air flow, ft³/min', fromZero: true },
    height: 280,
    series: [
      { kind: 'line', points: curve('rated'), words: 'rated, least' },
      { kind: 'dashed', points: curve('output'), words: 'output, least' },
      { kind: 'points', points: [[volume, rated]], words: 'rated', strong: rated < needs.rated },
      ...(output === undefined
        ? []
        : [
            {
              kind: 'hollow-points' as const,
              points: [[volume, output] as [number, number]],
              words: 'measured',
              strong: output < needs.output,
            },
          ]),
    ],
  });
}

/** 33 CFR 183.610, exhaust blowers of a petrol engine's compartment. */
export const petrolVentilation = defineWorksheet({
  kind: 'petrol-ventilation',
  version: 1,
  title: 'Petrol compartment, powered ventilation',
  group: 'gas',
  system: 'fuel',
  purpose:
    'Compares the exhaust blowers of a petrol engine’s compartment, and the air they really move, with what United States rules require for its volume.',
  inputs,
  applicability:
    'Compartments with a permanently installed petrol engine that has an electric starter, in recreational boats under United States rules (33 CFR 183 subpart K, boats built since August 1980). Natural ventilation is required besides.',
  outside: (v) =>
    v.engine === 'petrol-starter'
      ? undefined
      : v.engine === 'other'
        ? 'The rule covers petrol engines only.'
        : 'The rule asks for blowers only where the engine has an electric starter; natural ventilation is required all the same.',
  compute: (v) => {
    const volume = v.netVolume.in('ft3');
    const needs = blowerNeeds(volume);
    const air = openToAtmosphere(v.netVolume, v.openArea);
    const rated = v.ratedCapacity.in('cfm');
    const output = v.measuredOutput?.in('cfm') ?? null;
    return {
      outputs: {
        requiredRated: measured('Rated capacity required', needs.rated, 'cfm', { digits: 4, also: 'm3/h' }),
        requiredOutput: measured('Output required', needs.output, 'cfm', { digits: 4, also: 'm3/h' }),
        ratedShare: measured('Rated capacity, of that required', (rated / needs.rated) * 100, '%'),
        outputShare: measured(
          'Output, of that required',
          output === null ? null : (output / needs.output) * 100,
          '%',
        ),
        airChange: measured('Time to change the air once', output ? volume / output : null, 'min'),
        openAreaNeeded: measured('Open area that would need no blower', air.needed, 'in2', { also: 'cm2' }),
        openToAtmosphere: yes('Open to the atmosphere', air.open),
      },
      ...conclude(
        air.open
          ? [
              {
                verdict: 'satisfactory',
                reason: `The compartment is open to the atmosphere (${v.openArea?.text()}, at least ${limitText(air.needed, 'in2', v.openArea)} needed): no blower is required.`,
              },
            ]
          : [
              ...judgeFlow(v),
              ...judgePoints([
                {
                  answer: v.intakeLow,
                  what: 'whether the intakes are in the lower third',
                  bad: 'A blower intake is above the lower third of the compartment, where the vapour does not lie.',
                },
                {
                  answer: v.intakeAboveBilge,
                  what: 'whether the intakes are clear of bilge water',
                  bad: 'A blower intake is below the normal bilge water, which shuts it.',
                },
                {
                  answer: v.label,
                  what: 'the warning label at each ignition switch',
                  bad: 'The blower warning label is missing at an ignition switch.',
                },
              ]),
            ],
      ),
      working: [volumeLine(v.netVolume), openLine(v.netVolume, v.openArea), ...needLines(volume)],
    };
  },
  draw: (v) => [drawNeeds(v)],
  cautions: petrolCautions,
  sources: [
    {
      citation: '33 CFR 183.610, table and paragraphs (a) to (f)',
      standing: 'printed',
      note: '2015 annual edition; compare with the current text',
    },
    openSource,
    {
      citation: 'Accuracy of a hand-held flow measurement, 10 % of the reading',
      standing: 'practice',
      note: 'common practice, no source; the firm’s own value goes in',
    },
  ],
});
