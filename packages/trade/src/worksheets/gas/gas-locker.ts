import { checked, choice, fallback, measure, optional } from '../core/fields.ts';
import { measured, number } from '../core/outputs.ts';
import { Quantity } from '../core/quantity.ts';
import { conclude, type Judgement } from '../core/verdict.ts';
import { line } from '../core/working.ts';
import { defineWorksheet, type Values } from '../core/worksheet.ts';
import { judgePoints, toCheck } from './checked-points.ts';
import { drawLocker } from './locker-drawing.ts';
import { lockerPoints } from './locker-points.ts';
import { boreNeeded, type LockerRule, lockerRules, type PrintedLimit } from './locker-rules.ts';

const length = { unit: 'mm', units: ['cm', 'm', 'in', 'ft'] } as const;

const inputs = {
  rule: choice({
    label: 'Rule followed',
    choices: {
      'iso-10239': 'ISO 10239 (Europe and others)',
      'abyc-a1': 'ABYC A-1 (United States, voluntary)',
      'uk-inland': 'UK inland waterways boat safety standard, part 7',
    },
  }),
  drainBore: measure({
    label: 'Bore of the drain',
    help: 'Inside, at its narrowest, fittings included; 0 if there is no drain',
    min: 0,
    max: 300,
    ...length,
  }),
  outletHeight: optional(
    measure({
      label: 'Height of the outlet above the waterline',
      help: 'At rest, fully loaded, ready for use; below zero if it is under water',
      min: -2000,
      max: 5000,
      ...length,
    }),
  ),
  outletDistance: optional(
    measure({
      label: 'Distance of the outlet from the nearest opening into the boat',
      help: 'Ports, vents, hatches, companionway, engine air; along the hull',
      min: 0,
      max: 50_000,
      ...length,
    }),
  ),
  before2000: fallback(
    checked({ label: 'Built before 3 January 2000', help: 'Matters for the UK inland rule only' }),
    'no',
  ),
  gasCarried: optional(
    measure({
      label: 'Gas carried in the locker',
      help: 'Matters for the UK inland rule and a boat built before 2000',
      unit: 'kg',
      units: ['lb'],
      above: 0,
      max: 1000,
    }),
  ),
  vapourTight: toCheck({
    label: 'Locker vapour-tight to the inside of the boat',
    help: 'No crack, hole or open seam up to the height of the valves and regulator at least',
  }),
  opensTop: toCheck({ label: 'Locker opens only at the top, to the open air' }),
  gasketLatch: toCheck({ label: 'Lid with a gasket and a latch that needs no tool' }),
  passagesSealed: toCheck({ label: 'Pipes and hoses sealed where they pass the wall' }),
  drainLowest: toCheck({ label: 'Drain starts at the lowest point of the locker' }),
  drainFalls: toCheck({
    label: 'Drain falls all the way and ends below the locker’s bottom',
    help: 'No dip that can hold water',
  }),
  drainClear: toCheck({
    label: 'Drain clear and sound along its whole run',
    help: 'Pour in water and see it all come out; hose and clips intact',
  }),
  nothingElse: toCheck({ label: 'Nothing loose stowed that could block the drain or hurt a valve' }),
  secured: toCheck({ label: 'Cylinders upright and secured' }),
  noIgnition: toCheck({ label: 'Nothing in the locker that can spark' }),
};

type Given = Values<typeof inputs>;

const printedLimit = (limit: PrintedLimit) => new Quantity(limit.value, limit.unit);

function judgeAtLeast(
  what: string,
  found: Quantity | undefined,
  limit: PrintedLimit,
  rule: LockerRule,
): Judgement {
  const asked = printedLimit(limit).text();
  if (!found)
    return {
      verdict: 'indeterminate',
      reason: `The ${what} was not measured; ${rule.name} asks for ${asked} or more.`,
    };
  return found.in(limit.unit) >= limit.value
    ? {
        verdict: 'satisfactory',
        reason: `The ${what} is ${found.text()}; ${rule.name} asks for ${asked} or more.`,
      }
    : {
        verdict: 'unsatisfactory',
        reason: `The ${what} is ${found.text()}, less than the ${asked} that ${rule.name} asks for.`,
      };
}

function judgeBore(v: Given): Judgement {
  const rule = lockerRules[v.rule];
  if (v.drainBore.value === 0)
    return { verdict: 'unsatisfactory', reason: 'The locker has no drain: gas that leaks stays in it.' };
  const needed = boreNeeded(v.rule, v.before2000, v.gasCarried);
  if (!('unknown' in needed)) return judgeAtLeast('bore of the drain', v.drainBore, needed, rule);
  const full = judgeAtLeast('bore of the drain', v.drainBore, rule.bore, rule);
  if (full.verdict === 'satisfactory') return full;
  const least = judgeAtLeast('bore of the drain', v.drainBore, needed.atLeast, rule);
  if (least.verdict === 'unsatisfactory') return least;
  return {
    verdict: 'indeterminate',
    reason: `The bore of the drain is ${v.drainBore.text()}, between the 12 mm of older boats and the 19 mm of others; ${needed.unknown}.`,
  };
}

function judgeHeight(v: Given): Judgement {
  const rule: LockerRule = lockerRules[v.rule];
  if (rule.height !== 'above')
    return judgeAtLeast('height of the outlet above the waterline', v.outletHeight, rule.height, rule);
  if (!v.outletHeight)
    return { verdict: 'indeterminate', reason: 'Where the outlet lies to the waterline was not measured.' };
  return v.outletHeight.value > 0
    ? {
        verdict: 'satisfactory',
        reason: `The outlet is ${v.outletHeight.text()} above the waterline, as ${rule.name} asks.`,
      }
    : {
        verdict: 'unsatisfactory',
        reason: `The outlet is not above the waterline, as ${rule.name} asks: the drain is shut by water.`,
      };
}

function judge(v: Given): Judgement[] {
  const rule: LockerRule = lockerRules[v.rule];
  return [
    judgeBore(v),
    judgeHeight(v),
    ...(rule.distance
      ? [
          judgeAtLeast(
            'distance of the outlet from the nearest opening',
            v.outletDistance,
            rule.distance,
            rule,
          ),
        ]
      : []),
    ...judgePoints(lockerPoints(v, rule.gasket)),
  ];
}

/** Gas cylinder locker and its drain, measured and looked over against a rule. */
export const gasLocker = defineWorksheet({
  kind: 'gas-locker',
  version: 1,
  title: 'Gas locker and drain',
  group: 'gas',
  system: 'gas',
  purpose:
    'Checks that gas leaking in the cylinder locker drains overboard and can’t reach the inside of the boat: bore, run and end of the drain, tightness, clearances.',
  inputs,
  applicability:
    'Closed lockers for LPG cylinders on small craft. Cylinders on the open deck, or in a self-draining cockpit, have clearances of their own that this doesn’t cover.',
  compute: (v) => {
    const rule: LockerRule = lockerRules[v.rule];
    const needed = boreNeeded(v.rule, v.before2000, v.gasCarried);
    const judgements = judge(v);
    const points = lockerPoints(v, rule.gasket);
    const toMm = (limit: PrintedLimit | undefined) => (limit ? printedLimit(limit).in('mm') : null);
    const limitText = (limit: PrintedLimit) => `${printedLimit(limit).text()} or more`;
    return {
      outputs: {
        requiredBore: measured('Bore asked for', 'unknown' in needed ? null : toMm(needed), 'mm', {
          also: 'in',
        }),
        requiredHeight: measured(
          'Height above the waterline asked for',
          rule.height === 'above' ? 0 : toMm(rule.height),
          'mm',
          { also: 'in' },
        ),
        requiredDistance: measured('Distance from openings asked for', toMm(rule.distance), 'mm', {
          also: 'in',
        }),
        faults: number('Points that fail', judgements.filter((j) => j.verdict === 'unsatisfactory').length),
        notExamined: number('Points not examined', points.filter((p) => p.answer === 'not-examined').length),
      },
      ...conclude(judgements),
      working: [
        line('Bore', v.drainBore.text(), undefined) +
          ('unknown' in needed
            ? `; asked for: not told, ${needed.unknown}`
            : `; asked for: ${limitText(needed)}`),
        `Outlet above the waterline: ${v.outletHeight?.text() ?? 'not measured'}; asked for: ${
          rule.height === 'above' ? 'above it' : limitText(rule.height)
        }`,
        `Outlet from openings: ${v.outletDistance?.text() ?? 'not measured'}; asked for: ${
          rule.distance ? limitText(rule.distance) : 'no figure seen in this rule'
        }`,
      ],
    };
  },
  draw: (v) => [
    drawLocker({
      rule: lockerRules[v.rule],
      bore: v.drainBore,
      height: v.outletHeight,
      distance: v.outletDistance,
      boreNeeded: boreNeeded(v.rule, v.before2000, v.gasCarried),
    }),
  ],
  cautions: [
    'Propane and butane are heavier than air. If gas is smelt, shut the cylinder, keep switches as they are, open up and leave; never look for a leak with a flame.',
    'This is an indication by a surveyor. Gas work and its certificate are for a licensed gas fitter, by the local code.',
    'Which rule binds depends on the flag, the water and the use of the boat; local rules govern.',
  ],
  sources: [
    {
      citation:
        'ISO 10239 as restated by the UK Maritime and Coastguard Agency’s guidance on gas installations, 2.1 and 2.2',
      standing: 'secondary',
      note: 'drain at least 19 mm bore, ending 75 mm or more above the waterline at rest, 500 mm or more from openings; also restated in a classification society’s rules for recreational craft, section 5. The guidance also asks for a vent near the top of the locker and gas detection',
    },
    {
      citation: 'UK Boat Safety Scheme, non-private boats, part 7, standards 7.2 to 7.6',
      standing: 'printed',
      note: 'drain at least 19 mm; 12 mm where built before 3 January 2000 with no more than 15 kg of gas',
    },
    {
      citation: 'ABYC A-1, lockers',
      standing: 'secondary',
      note: 'as restated by marine surveyors: vent at least 1/2 in inside, ending below the locker’s bottom, above the waterline and 20 in or more from openings',
    },
    {
      citation: 'Nothing that can spark in the locker; cylinders upright',
      standing: 'practice',
      note: 'common practice, no source',
    },
  ],
});
