import { Quantity } from '../core/quantity.ts';
import { settle } from '../core/units.ts';
import {
  type ClearanceTable,
  type ClearanceTableKey,
  clearanceTableOf,
  clearanceTables,
  coversShaft,
} from './bearing-clearance-table.ts';
import type { ShaftWearValues } from './shaft-wear-inputs.ts';
import { shaftMaterialOf, shaftTorque, stiffnessLeft, strengthLeft, torsionalStress } from './shafting.ts';

/** What one table, or the firm's own figures, asks of this shaft's bearing; mm across the diameter. */
export interface ClearanceLimits {
  words: string;
  covered: boolean;
  newLeast?: number;
  newMost?: number;
  limit?: number;
}

const mm = (inches: number) => new Quantity(inches, 'in').in('mm');

function limitsOf(table: ClearanceTable, shaftIn: number): ClearanceLimits {
  if (!coversShaft(table, shaftIn)) return { words: table.words, covered: false };
  const fit = table.newFit?.(shaftIn);
  const limit = table.limit?.(shaftIn);
  return {
    words: table.words,
    covered: true,
    ...(fit ? { newLeast: mm(fit.least) } : {}),
    ...(fit?.most === undefined ? {} : { newMost: mm(fit.most) }),
    ...(limit === undefined ? {} : { limit: mm(limit) }),
  };
}

function ownLimits(v: ShaftWearValues): ClearanceLimits {
  const fit = v.ownNewClearance?.in('mm');
  return {
    words: 'Own figures',
    covered: true,
    ...(fit === undefined ? {} : { newLeast: fit, newMost: fit }),
    ...(v.ownLimit ? { limit: v.ownLimit.in('mm') } : {}),
  };
}

export interface ShaftStress {
  /** N·m */
  torque: number;
  /** MPa */
  asNew: number;
  now: number;
  /** Yield in shear, MPa, where it is known. */
  yieldStrength?: number;
}

/** Everything computed from the readings; lengths in mm, shares in per cent. */
export interface ShaftWearMeasures {
  lost: number;
  lostShare: number;
  shows: boolean;
  /** Nothing can be told of a pitted or cracked shaft from its diameter. */
  even: boolean;
  ratio: number;
  strength: number;
  stiffness: number;
  stress?: ShaftStress;
  play?: number;
  playShare?: number;
  chosen: ClearanceLimits;
  /** Every published table, for comparison. */
  tables: ClearanceLimits[];
  /** Play that is in the bearing itself: all but what the shaft lost. */
  bearingShare?: number;
  /** Play that a new bearing would start with on this shaft. */
  renewedLeast: number;
  renewedMost: number;
}

function yieldOf(v: ShaftWearValues): number | undefined {
  if (v.yieldStrength) return v.yieldStrength.in('MPa');
  return v.material && new Quantity(shaftMaterialOf(v.material).yieldPsi, 'psi').in('MPa');
}

function stressOf(v: ShaftWearValues): ShaftStress | undefined {
  if (!v.power || !v.shaftSpeed) return undefined;
  const torque = shaftTorque(v.power.in('kW'), v.shaftSpeed.in('rpm'));
  const strength = yieldOf(v);
  return {
    torque,
    asNew: torsionalStress(torque, v.originalDiameter.in('mm')),
    now: torsionalStress(torque, v.wornDiameter.in('mm')),
    ...(strength === undefined ? {} : { yieldStrength: strength }),
  };
}

export function shaftWearMeasures(v: ShaftWearValues): ShaftWearMeasures {
  const original = v.originalDiameter.in('mm');
  // A worn diameter read a division larger than the new one is no growth.
  const ratio = Math.min(1, v.wornDiameter.in('mm') / original);
  const lost = settle(original - original * ratio);
  const shaftIn = v.originalDiameter.in('in');
  const tables = Object.keys(clearanceTables).map((key) =>
    limitsOf(clearanceTableOf(key as ClearanceTableKey), shaftIn),
  );
  const chosen =
    v.clearanceTable === 'own' ? ownLimits(v) : limitsOf(clearanceTableOf(v.clearanceTable), shaftIn);
  const stress = stressOf(v);
  const play = v.play?.in('mm');
  return {
    lost,
    lostShare: settle(100 * (1 - ratio)),
    shows: lost > v.resolution.in('mm'),
    even: v.surface !== 'pitted',
    ratio,
    strength: settle(100 * strengthLeft(ratio)),
    stiffness: settle(100 * stiffnessLeft(ratio)),
    ...(stress ? { stress } : {}),
    ...(play === undefined
      ? {}
      : { play, playShare: (100 * play) / original, bearingShare: Math.max(0, play - lost) }),
    chosen,
    tables,
    renewedLeast: lost + (chosen.newLeast ?? 0),
    renewedMost: lost + (chosen.newMost ?? chosen.newLeast ?? 0),
  };
}
