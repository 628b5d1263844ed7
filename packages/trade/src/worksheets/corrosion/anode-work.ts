import {
  alloyNeeded,
  coatingBreakdown,
  currentDemand,
  usualCapacity,
  usualPotential,
  yearsOf,
} from './anode-demand.ts';
import type { Asked } from './anode-inputs.ts';
import { type Measures, resistanceAtEnd, resistanceNew, usualUtilisation } from './anode-resistance.ts';

const monthsPerYear = 12;

/** Everything worked from the inputs: A, kg, Ω, V, months, shares of 1 unless named per cent. */
export type Worked = ReturnType<typeof workAnodes>;

/** Works every question the inputs allow; what they don't is left out. */
export function workAnodes(v: Asked) {
  const capacity = v.capacity?.in('Ah/kg') ?? usualCapacity[v.alloy];
  const utilisation = v.utilisation ?? usualUtilisation[v.shape ?? 'other'];
  const fitted = v.count * v.newMass.in('kg');
  const years = (v.life ?? v.untilNext).in('year');
  const wear = wearOf(v, fitted, capacity);
  const demand = demandOf(v, years);
  const need = demand && {
    mass: alloyNeeded(demand.mean, years, utilisation, capacity),
    monthsLeft: lastsMonths(fitted, wear?.wasted ?? 0, utilisation, demand.mean, capacity),
  };
  const output = outputOf(v, utilisation);
  return {
    capacity,
    utilisation,
    fitted,
    years,
    wear,
    demand,
    need,
    output,
    numbers: numbersOf(v.newMass.in('kg'), demand, need?.mass, output),
  };
}

function lastsMonths(fitted: number, wasted: number, utilisation: number, current: number, capacity: number) {
  const usable = fitted * Math.max(0, utilisation - wasted / 100);
  return current > 0 ? monthsPerYear * yearsOf(usable, current, 1, capacity) : null;
}

function wearOf(v: Asked, fitted: number, capacity: number) {
  if (!v.wasted) return undefined;
  const wasted = v.wasted.in('%');
  const within = v.wastedWithin.in('%');
  const renewAt = v.renewAt.in('%');
  const months = v.inService?.in('month');
  const told = wasted >= within;
  const left = (share: number) => (months ? Math.max(0, ((renewAt - share) / share) * months) : null);
  return {
    wasted,
    within,
    renewAt,
    told,
    ...(months ? { months } : {}),
    current: v.inService ? ((1000 * (wasted / 100) * fitted * capacity) / v.inService.in('s')) * 3600 : null,
    timeLeft: told ? left(wasted) : null,
    timeLeftAtLeast: left(wasted + within),
  };
}

function demandOf(v: Asked, years: number) {
  if (v.meanCurrent) {
    const mean = v.meanCurrent.in('A');
    return { initial: mean, mean, final: mean };
  }
  if (!v.area || !v.meanDensity) return undefined;
  const area = v.area.in('m2');
  const share = (at: number) => coatingBreakdown(v.bareStart, v.barePerYear, at);
  const mean = v.meanDensity.in('A/m2');
  return {
    initial: currentDemand(area, v.initialDensity?.in('A/m2') ?? mean, share(0)),
    mean: currentDemand(area, mean, share(years / 2)),
    final: currentDemand(area, v.finalDensity?.in('A/m2') ?? mean, share(years)),
  };
}

/** The measures in metres that were given. */
export function measuresOf(v: Asked): Measures {
  const given = {
    length: v.length?.in('m'),
    radius: v.radius?.in('m'),
    width: v.width?.in('m'),
    depth: v.depth?.in('m'),
    area: v.exposedArea?.in('m2'),
    core: v.coreWidth?.in('m'),
    standOff: v.standOff?.in('m'),
  };
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
}

function outputOf(v: Asked, utilisation: number) {
  if (!v.shape) return undefined;
  const measures = measuresOf(v);
  const resistivity = v.resistivity.in('ohm m');
  const resistance = resistanceNew(v.shape, measures, resistivity);
  const atEnd = resistanceAtEnd(v.shape, measures, resistivity, utilisation);
  const own = v.anodePotential?.in('mV') ?? usualPotential[v.alloy];
  const driving = own === undefined ? null : (v.hullPotential.in('mV') - own) / 1000;
  const currentOf = (r: number | null) => (r === null || driving === null ? null : driving / r);
  return {
    shape: v.shape,
    resistivity,
    driving,
    resistance,
    current: currentOf(resistance),
    resistanceAtEnd: atEnd,
    currentAtEnd: currentOf(atEnd),
  };
}

/** Binary noise must not ask for one anode more. */
const whole = (value: number) => Math.ceil(value * (1 - 1e-12));

function numbersOf(
  each: number,
  demand: ReturnType<typeof demandOf>,
  mass: number | undefined,
  output: ReturnType<typeof outputOf>,
) {
  if (!demand || mass === undefined) return undefined;
  const counts = {
    mass: whole(mass / each),
    initial: output?.current ? whole(demand.initial / output.current) : null,
    // Without its end the new anode's current is the most that can be said.
    final: output?.currentAtEnd ? whole(demand.final / output.currentAtEnd) : null,
  };
  const most = Math.max(counts.mass, counts.initial ?? 0, counts.final ?? 0);
  const governs =
    most === counts.mass ? 'their alloy' : most === counts.final ? 'current at the end' : 'current at first';
  return { ...counts, most, governs };
}
