import type { Judgement } from '../core/verdict.ts';
import { formatNumber } from '../core/working.ts';
import type { Asked } from './insulation-inputs.ts';

const milli = (value: number) => `${formatNumber(value, 3)} mA`;

/** Leakage of the shore-power cord, which is leakage into the water. */
export function judgeShore(v: Asked): Judgement[] {
  if (!v.shoreLeakage) return [];
  const found = v.shoreLeakage.in('mA');
  const most = v.mostShoreLeakage.in('mA');
  if (found < v.meterResolution.in('mA')) {
    const reason = `No leakage of the shore cord that this meter can show (${milli(v.meterResolution.in('mA'))}).`;
    return [{ verdict: 'satisfactory', reason }];
  }
  const told = `The shore cord leaks ${milli(found)}; ${milli(most)} is the most`;
  if (found > most) {
    return [{ verdict: 'unsatisfactory', reason: `${told}: a swimmer near the boat could be electrocuted.` }];
  }
  return found > most / 2
    ? [{ verdict: 'attention', reason: `${told}; a device of that rating may trip from half of it.` }]
    : [{ verdict: 'satisfactory', reason: `${told}.` }];
}

/** From here a battery's leakage is a sizable part of an ampere, mA: our reading. */
const gross = 100;

/** Leakage from the battery with everything off. */
export function judgeBattery(v: Asked): Judgement[] {
  if (!v.batteryLeakage) return [];
  const found = v.batteryLeakage.in('mA');
  const most = v.mostBatteryLeakage.in('mA');
  const finest = v.meterResolution.in('mA');
  if (finest > most) {
    const reason = `The meter shows no less than ${milli(finest)}, more than the ${milli(most)} that matters.`;
    return [{ verdict: 'indeterminate', reason }];
  }
  if (found < finest) {
    const reason = `No leakage from the battery that this meter can show (${milli(finest)}).`;
    return [{ verdict: 'satisfactory', reason }];
  }
  const told = `The battery leaks ${milli(found)} with everything off; ${milli(most)} is usual in a sound system`;
  if (found >= gross) {
    return [
      {
        verdict: 'unsatisfactory',
        reason: `${told}. Disconnect the battery until the circuit is found: stray current corrodes fittings fast.`,
      },
    ];
  }
  return found > most
    ? [{ verdict: 'attention', reason: `${told}. Find the circuit by switching them off one by one.` }]
    : [{ verdict: 'satisfactory', reason: `${told}.` }];
}
