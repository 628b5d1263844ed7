import type { CheckedWorksheet } from '../support/check.ts';
import { anodeLifeChecks } from './corrosion/anode-life.ts';
import { galvanicCoupleChecks } from './corrosion/galvanic-couple.ts';
import { hullPotentialChecks } from './corrosion/hull-potential.ts';
import { conductorAmpacityChecks } from './electrical/conductor-ampacity.ts';
import { dcVoltageDropChecks } from './electrical/dc-voltage-drop.ts';
import { insulationResistanceChecks } from './electrical/insulation-resistance.ts';
import { batteryVentilationChecks } from './gas/battery-ventilation.ts';
import { gasLeakDownChecks } from './gas/gas-leak-down.ts';
import { gasLockerChecks } from './gas/gas-locker.ts';
import { naturalVentilationChecks } from './gas/natural-ventilation.ts';
import { petrolVentilationChecks } from './gas/petrol-ventilation.ts';
import { engineReadingsChecks } from './propulsion/engine-readings.ts';
import { propellerSlipChecks } from './propulsion/propeller-slip.ts';
import { shaftSizeChecks } from './propulsion/shaft-size.ts';
import { shaftWearChecks } from './propulsion/shaft-wear.ts';
import { speedRunsChecks } from './propulsion/speed-runs.ts';
import { chainWearChecks } from './rig/chain-wear.ts';
import { riggingWireChecks } from './rig/rigging-wire.ts';
import { rodeChecks } from './rig/rode.ts';
import { riskMatrixChecks } from './risk/risk-matrix.ts';
import { carriageChecks } from './rules/carriage.ts';
import { hullNumberChecks } from './rules/hull-number.ts';
import { navigationLightsChecks } from './rules/navigation-lights.ts';
import { safeLoadingChecks } from './rules/safe-loading.ts';
import { safePowerChecks } from './rules/safe-power.ts';
import { tonnageChecks } from './rules/tonnage.ts';
import { incliningChecks } from './stability/inclining.ts';
import { rollPeriodChecks } from './stability/roll-period.ts';
import { floodingRateChecks } from './structure/flooding-rate.ts';
import { moistureMapChecks } from './structure/moisture-map.ts';
import { plateThicknessChecks } from './structure/plate-thickness.ts';
import { soundingMapChecks } from './structure/sounding-map.ts';
import { comparableSalesChecks } from './value/comparable-sales.ts';
import { costLessDepreciationChecks } from './value/cost-less-depreciation.ts';
import { reconcileChecks } from './value/reconcile.ts';

/** The checks of every worksheet, in the order of the registry. */
export const allChecks: CheckedWorksheet[] = [
  // Gas and ventilation
  gasLeakDownChecks,
  gasLockerChecks,
  petrolVentilationChecks,
  naturalVentilationChecks,
  batteryVentilationChecks,
  // Electrical
  dcVoltageDropChecks,
  conductorAmpacityChecks,
  insulationResistanceChecks,
  // Corrosion
  hullPotentialChecks,
  anodeLifeChecks,
  galvanicCoupleChecks,
  // Structure and flooding
  moistureMapChecks,
  soundingMapChecks,
  plateThicknessChecks,
  floodingRateChecks,
  // Propulsion
  shaftWearChecks,
  shaftSizeChecks,
  propellerSlipChecks,
  speedRunsChecks,
  engineReadingsChecks,
  // Rig and ground tackle
  riggingWireChecks,
  rodeChecks,
  chainWearChecks,
  // Rules
  hullNumberChecks,
  safeLoadingChecks,
  safePowerChecks,
  carriageChecks,
  navigationLightsChecks,
  tonnageChecks,
  // Stability
  incliningChecks,
  rollPeriodChecks,
  // Value
  comparableSalesChecks,
  costLessDepreciationChecks,
  reconcileChecks,
  // Risk
  riskMatrixChecks,
];
