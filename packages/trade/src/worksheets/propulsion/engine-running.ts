import { Quantity } from '../core/quantity.ts';
import { settle } from '../core/units.ts';
import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import type { EngineValues } from './engine-readings-inputs.ts';
import { guardAboveF, hoses, wetNormalMostF } from './engine-rules-table.ts';

const fahrenheit = (limit: number, reading: Quantity) => new Quantity(limit, 'degF').to(reading.unit).text(3);

/** Full-throttle speed reached, per cent of rated; nothing when it was not taken. */
export const shareOfRated = (v: EngineValues): number | undefined =>
  v.ratedSpeed && v.reachedSpeed
    ? settle((100 * v.reachedSpeed.in('rpm')) / v.ratedSpeed.in('rpm'))
    : undefined;

/** Whether the engine reaches its rated speed: if not, it is overloaded or short of power. */
export function judgeSpeed(v: EngineValues): Judgement[] {
  const share = shareOfRated(v);
  if (share === undefined || !v.ratedSpeed || !v.reachedSpeed) return [];
  const division = (100 * v.tachometerResolution.in('rpm')) / v.ratedSpeed.in('rpm');
  const has = `The engine reaches ${v.reachedSpeed.text()} of its rated ${v.ratedSpeed.text()} (${formatNumber(share, 4)}%)`;
  const least = 100 - v.shortfallAllowed.in('%');
  const most = 100 + v.excessAllowed.in('%');
  const overload =
    'it is overloaded or short of power: look at propeller, fouling, load, fuel, air and the tachometer itself';
  if (share < least) {
    const reason = `${has}, more than ${v.shortfallAllowed.text(3)} short: ${overload}. Running so harms the engine.`;
    return [{ verdict: 'unsatisfactory', reason }];
  }
  if (share < 100 - division) return [{ verdict: 'attention', reason: `${has}: ${overload}.` }];
  if (share > most) {
    const reason = `${has}, more than ${v.excessAllowed.text(3)} above: the propeller may be too small, the governor out of adjustment or the tachometer wrong.`;
    return [{ verdict: 'attention', reason }];
  }
  const as = share < 100 ? ', short by no more than the tachometer can show' : '';
  return [{ verdict: 'satisfactory', reason: `${has}${as}.` }];
}

function judgeWetExhaust(v: EngineValues): Judgement[] {
  if (!v.wetExhaust) return [];
  const hot = v.wetExhaust.in('degF');
  const hose = hoses[v.hose];
  const has = `The exhaust hose is at ${v.wetExhaust.text(4)}`;
  const limit = fahrenheit(hose.limitF, v.wetExhaust);
  if (hot > hose.limitF) {
    const reason = `${has}, above the ${limit} its kind of hose may bear: look at the raw-water flow, the injection elbow and the hose before the engine is run again.`;
    return [{ verdict: 'unsatisfactory', reason }];
  }
  if (hot > wetNormalMostF) {
    const reason = `${has}: its kind of hose bears ${limit}, but a wet section is normally below ${fahrenheit(wetNormalMostF, v.wetExhaust)}. Look at the raw-water flow and the injection elbow.`;
    return [{ verdict: 'attention', reason }];
  }
  const unknown =
    v.hose === 'unknown' ? ` The hose’s marking was not read; it was taken to bear ${limit}.` : '';
  return [
    {
      verdict: 'satisfactory',
      reason: `${has}, not above the ${fahrenheit(wetNormalMostF, v.wetExhaust)} of a normal wet section.${unknown}`,
    },
  ];
}

function judgeDryExhaust(v: EngineValues): Judgement[] {
  if (!v.dryExhaust) return [];
  const limit = fahrenheit(guardAboveF, v.dryExhaust);
  const has = `The hottest dry exhaust surface is at ${v.dryExhaust.text(4)}`;
  if (v.dryExhaust.in('degF') <= guardAboveF) {
    return [
      { verdict: 'satisfactory', reason: `${has}, not above the ${limit} from which a guard is asked.` },
    ];
  }
  switch (v.guarded) {
    case 'yes':
      return [
        {
          verdict: 'satisfactory',
          reason: `${has}, above ${limit}, and is lagged or guarded as it must be.`,
        },
      ];
    case 'no':
      return [
        {
          verdict: 'unsatisfactory',
          reason: `${has}, above ${limit}, with neither lagging nor guard: it burns skin and may set fire to what touches it.`,
        },
      ];
    default:
      return [
        {
          verdict: 'attention',
          reason: `${has}, above ${limit}; whether it is lagged or guarded was not examined.`,
        },
      ];
  }
}

/** What the temperatures say. */
export function judgeTemperatures(v: EngineValues): Judgement[] {
  const judgements: Judgement[] = [];
  if (v.coolant) {
    const most = v.coolantMost.to(v.coolant.unit);
    const over = v.coolant.in('degF') > v.coolantMost.in('degF');
    judgements.push({
      verdict: over ? 'unsatisfactory' : 'satisfactory',
      reason: `The coolant is at ${v.coolant.text(4)}${over ? ', above' : ', not above'} the ${most.text(3)} accepted.`,
    });
  }
  return [...judgements, ...judgeWetExhaust(v), ...judgeDryExhaust(v)];
}
