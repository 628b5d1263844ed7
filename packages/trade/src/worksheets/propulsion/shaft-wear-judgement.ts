import { Quantity } from '../core/quantity.ts';
import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import type { ShaftWearValues } from './shaft-wear-inputs.ts';
import type { ClearanceLimits, ShaftWearMeasures } from './shaft-wear-measures.ts';

/** A length in mm, in the unit the surveyor measured in. */
export const lengthText = (v: ShaftWearValues, mm: number): string =>
  new Quantity(mm, 'mm').to(v.wornDiameter.unit).text(3);

const percent = (value: number) => `${formatNumber(value, 3)}%`;

function judgeDiameter(v: ShaftWearValues, m: ShaftWearMeasures): Judgement[] {
  if (!m.even) {
    const reason =
      'The shaft is pitted, cracked or corroded in a crevice: its diameter does not tell the strength left. It must be drawn and examined for cracks.';
    return [{ verdict: 'indeterminate', reason }];
  }
  if (!m.shows) {
    const reason = `No wear that these tools can show: it would take more than ${v.resolution.text(3)} of diameter to be told from none.`;
    return [{ verdict: 'satisfactory', reason }];
  }
  const renew = v.renewBelow.in('%');
  const attention = v.attentionBelow.in('%');
  const lost = `${lengthText(v, m.lost)} of diameter is gone (${percent(m.lostShare)}), which leaves ${percent(m.strength)} of the torsional strength`;
  const judgement: Judgement =
    m.strength < renew
      ? { verdict: 'unsatisfactory', reason: `${lost}: less than the renewal limit of ${percent(renew)}.` }
      : m.strength < attention
        ? {
            verdict: 'attention',
            reason: `${lost}: less than ${percent(attention)}, still above the renewal limit of ${percent(renew)}.`,
          }
        : { verdict: 'satisfactory', reason: `${lost}: not less than ${percent(attention)}.` };
  return [judgement, ...nearLimit(v, m, [renew, attention])];
}

/** A division of the micrometer either way may move the strength across a limit: then the reading doesn't decide. */
function nearLimit(v: ShaftWearValues, m: ShaftWearMeasures, limits: number[]): Judgement[] {
  const division = v.resolution.in('mm') / v.originalDiameter.in('mm');
  const least = 100 * Math.max(0, m.ratio - division) ** 3;
  const most = 100 * Math.min(1, m.ratio + division) ** 3;
  const limit = limits.find((value) => least < value && value < most);
  if (limit === undefined) return [];
  const reason = `One division of the micrometer decides: the strength left lies between ${percent(least)} and ${percent(most)}, on both sides of ${percent(limit)}. Measure again with a finer one.`;
  return [{ verdict: 'attention', reason }];
}

function judgeStress(v: ShaftWearValues, m: ShaftWearMeasures): Judgement[] {
  if (!m.even || m.stress?.yieldStrength === undefined) return [];
  const factor = m.stress.yieldStrength / m.stress.now;
  const least = v.leastFactor;
  const now = `At rated torque the worn shaft is stressed to ${formatNumber(m.stress.now, 3)} MPa, ${formatNumber(factor, 3)} times below its yield in shear`;
  if (factor < 1) {
    const reason = `At rated torque the worn shaft is stressed to ${formatNumber(m.stress.now, 3)} MPa, past its yield in shear of ${formatNumber(m.stress.yieldStrength, 3)} MPa.`;
    return [{ verdict: 'unsatisfactory', reason }];
  }
  return factor < least
    ? [{ verdict: 'attention', reason: `${now}; a factor of ${formatNumber(least)} is asked.` }]
    : [{ verdict: 'satisfactory', reason: `${now}; a factor of ${formatNumber(least)} is asked.` }];
}

/** Where a play stands by one table. */
export function standing(limits: ClearanceLimits, play: number): 'not-covered' | 'tight' | 'within' | 'over' {
  if (!limits.covered) return 'not-covered';
  if (limits.limit !== undefined && play > limits.limit) return 'over';
  if (limits.newLeast !== undefined && play < limits.newLeast) return 'tight';
  return limits.limit === undefined ? 'not-covered' : 'within';
}

function judgePlay(v: ShaftWearValues, m: ShaftWearMeasures): Judgement[] {
  const { play, chosen } = m;
  if (play === undefined) return [];
  const has = `Play in the bearing is ${lengthText(v, play)} (${percent(m.playShare ?? 0)} of the diameter)`;
  const limits = m.tables.flatMap((table) => table.limit ?? []);
  if (play > Math.max(...limits, chosen.limit ?? 0)) {
    return [
      { verdict: 'unsatisfactory', reason: `${has}: more than every limit known here. Renew the bearing.` },
    ];
  }
  const by = `by “${chosen.words}”`;
  const others = m.tables.filter((table) => table !== chosen && table.words !== chosen.words);
  const over = others.filter((table) => standing(table, play) === 'over').length;
  const within = others.filter((table) => standing(table, play) === 'within').length;
  const conflict = ` Of the other tables that set a limit for this shaft, ${over} would call it worn out and ${within} would not.`;
  const limit = chosen.limit ?? 0;
  const near = Math.abs(play - limit) < v.resolution.in('mm');
  switch (standing(chosen, play)) {
    case 'not-covered': {
      const reason = chosen.covered
        ? `${has}: the table chosen sets no greatest play, so it does not tell when the bearing is worn out.${conflict}`
        : `${has}: the table chosen has no row for this size of shaft.${conflict}`;
      return [{ verdict: 'indeterminate', reason }];
    }
    case 'over':
      return [
        {
          verdict: v.clearanceTable === 'own' ? 'unsatisfactory' : 'attention',
          reason: `${has}: over the limit of ${lengthText(v, limit)} by ${lengthText(v, play - limit)}, ${by}.${conflict}`,
        },
      ];
    case 'tight':
      return [
        {
          verdict: 'attention',
          reason: `${has}: tighter than the ${lengthText(v, chosen.newLeast ?? 0)} a water film needs ${by}; the bearing may run dry.${conflict}`,
        },
      ];
    default:
      return [
        {
          verdict: near ? 'attention' : 'satisfactory',
          reason: `${has}: ${near ? 'at the limit, as nearly as these tools tell; it is' : 'within'} ${lengthText(v, limit)} ${by}.${conflict}`,
        },
      ];
  }
}

function judgeRenewal(v: ShaftWearValues, m: ShaftWearMeasures): Judgement[] {
  if (!m.shows || v.place === 'elsewhere') return [];
  if (v.place === 'gland') {
    const reason = `The shaft is ${lengthText(v, m.lost)} small at the gland: new packing or a new seal there does not cure it, and will leak or wear early.`;
    return [{ verdict: 'attention', reason }];
  }
  const fit = m.chosen.newLeast;
  const start =
    fit === undefined
      ? `at least the ${lengthText(v, m.lost)} the shaft has lost`
      : `${lengthText(v, m.renewedLeast)} instead of ${lengthText(v, fit)}`;
  const limit = m.chosen.limit;
  const beyond =
    limit !== undefined && m.renewedLeast > limit
      ? `, over the limit of ${lengthText(v, limit)} from the first day`
      : '';
  const reason = `A new bearing on this worn shaft does not cure it: the play would start at ${start}${beyond}. Renew or build up the shaft as well.`;
  return [{ verdict: 'attention', reason }];
}

/** Every point judged of a worn shaft and its bearing. */
export function judgeShaftWear(v: ShaftWearValues, m: ShaftWearMeasures): Judgement[] {
  const ridge: Judgement[] =
    v.surface === 'ridged'
      ? [
          {
            verdict: 'attention',
            reason:
              'A ridge, step or groove raises the stress beyond what the diameter tells; have it examined for cracks.',
          },
        ]
      : [];
  return [...judgeDiameter(v, m), ...ridge, ...judgeStress(v, m), ...judgePlay(v, m), ...judgeRenewal(v, m)];
}
