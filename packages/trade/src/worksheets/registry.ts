import type { AnyWorksheet } from './core/worksheet.ts';
import { anodeLife } from './corrosion/anode-life.ts';
import { galvanicCouple } from './corrosion/galvanic-couple.ts';
import { hullPotential } from './corrosion/hull-potential.ts';
import { conductorAmpacity } from './electrical/conductor-ampacity.ts';
import { dcVoltageDrop } from './electrical/dc-voltage-drop.ts';
import { insulationResistance } from './electrical/insulation-resistance.ts';
import { batteryVentilation } from './gas/battery-ventilation.ts';
import { gasLeakDown } from './gas/gas-leak-down.ts';
import { gasLocker } from './gas/gas-locker.ts';
import { naturalVentilation } from './gas/natural-ventilation.ts';
import { petrolVentilation } from './gas/petrol-ventilation.ts';
import { engineReadings } from './propulsion/engine-readings.ts';
import { propellerSlip } from './propulsion/propeller-slip.ts';
import { shaftSize } from './propulsion/shaft-size.ts';
import { shaftWear } from './propulsion/shaft-wear.ts';
import { speedRuns } from './propulsion/speed-runs.ts';
import { chainWear } from './rig/chain-wear.ts';
import { riggingWire } from './rig/rigging-wire.ts';
import { rode } from './rig/rode.ts';
import { riskMatrix } from './risk/risk-matrix.ts';
import { carriage } from './rules/carriage.ts';
import { hullNumber } from './rules/hull-number.ts';
import { navigationLights } from './rules/navigation-lights.ts';
import { safeLoading } from './rules/safe-loading.ts';
import { safePower } from './rules/safe-power.ts';
import { tonnage } from './rules/tonnage.ts';
import { inclining } from './stability/inclining.ts';
import { rollPeriod } from './stability/roll-period.ts';
import { floodingRate } from './structure/flooding-rate.ts';
import { moistureMap } from './structure/moisture-map.ts';
import { plateThickness } from './structure/plate-thickness.ts';
import { soundingMap } from './structure/sounding-map.ts';
import { comparableSales } from './value/comparable-sales.ts';
import { costLessDepreciation } from './value/cost-less-depreciation.ts';
import { reconcile } from './value/reconcile.ts';

/** Every worksheet there is, in the order they are offered. */
export const worksheets: readonly AnyWorksheet[] = [
  // Gas and ventilation
  gasLeakDown,
  gasLocker,
  petrolVentilation,
  naturalVentilation,
  batteryVentilation,
  // Electrical
  dcVoltageDrop,
  conductorAmpacity,
  insulationResistance,
  // Corrosion
  hullPotential,
  anodeLife,
  galvanicCouple,
  // Structure and flooding
  moistureMap,
  soundingMap,
  plateThickness,
  floodingRate,
  // Propulsion
  shaftWear,
  shaftSize,
  propellerSlip,
  speedRuns,
  engineReadings,
  // Rig and ground tackle
  riggingWire,
  rode,
  chainWear,
  // Rules
  hullNumber,
  safeLoading,
  safePower,
  carriage,
  navigationLights,
  tonnage,
  // Stability
  inclining,
  rollPeriod,
  // Value
  comparableSales,
  costLessDepreciation,
  reconcile,
  // Risk
  riskMatrix,
];

const byKind = new Map(worksheets.map((worksheet) => [worksheet.kind, worksheet]));

/** The worksheet of a kind, if there is one. */
export const findWorksheet = (kind: string): AnyWorksheet | undefined => byKind.get(kind);
