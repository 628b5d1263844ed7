import type { AnyWorksheet } from './core/worksheet.ts';
import { conductorAmpacity } from './electrical/conductor-ampacity.ts';
import { dcVoltageDrop } from './electrical/dc-voltage-drop.ts';
import { insulationResistance } from './electrical/insulation-resistance.ts';
import { gasLeakDown } from './gas/gas-leak-down.ts';
import { shaftSize } from './propulsion/shaft-size.ts';
import { shaftWear } from './propulsion/shaft-wear.ts';
import { chainWear } from './rig/chain-wear.ts';
import { riggingWire } from './rig/rigging-wire.ts';
import { rode } from './rig/rode.ts';
import { safeLoading } from './rules/safe-loading.ts';
import { safePower } from './rules/safe-power.ts';
import { tonnage } from './rules/tonnage.ts';
import { moistureMap } from './structure/moisture-map.ts';
import { comparableSales } from './value/comparable-sales.ts';
import { costLessDepreciation } from './value/cost-less-depreciation.ts';
import { reconcile } from './value/reconcile.ts';

/** Every worksheet there is, in the order they are offered. */
export const worksheets: readonly AnyWorksheet[] = [
  // Gas and ventilation
  gasLeakDown,
  // Electrical
  dcVoltageDrop,
  conductorAmpacity,
  insulationResistance,
  // Corrosion
  // Structure and flooding
  moistureMap,
  // Propulsion
  shaftWear,
  shaftSize,
  // Rig and ground tackle
  riggingWire,
  rode,
  chainWear,
  // Rules
  safeLoading,
  safePower,
  tonnage,
  // Stability
  // Value
  comparableSales,
  costLessDepreciation,
  reconcile,
  // Risk
];

const byKind = new Map(worksheets.map((worksheet) => [worksheet.kind, worksheet]));

/** The worksheet of a kind, if there is one. */
export const findWorksheet = (kind: string): AnyWorksheet | undefined => byKind.get(kind);
