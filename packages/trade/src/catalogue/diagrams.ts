import type { Drawing } from '../drawing/svg.ts';
import { backingPlate } from './diagrams/backing-plate.ts';
import { ballastIronScrap } from './diagrams/ballast-iron-scrap.ts';
import { batteryBoxVented } from './diagrams/battery-box-vented.ts';
import { batterySecured } from './diagrams/battery-secured.ts';
import { batteryTerminalKind } from './diagrams/battery-terminal-kind.ts';
import { bilgeFloatSwitch } from './diagrams/bilge-float-switch.ts';
import { bulkheadChafe } from './diagrams/bulkhead-chafe.ts';
import { deckFittingCore } from './diagrams/deck-fitting-core.ts';
import { exhaustElbowWasted } from './diagrams/exhaust-elbow-wasted.ts';
import { exhaustRunRise } from './diagrams/exhaust-run-rise.ts';
import { fuelFillAndVent } from './diagrams/fuel-fill-and-vent.ts';
import { gasLockerDrainOverboard } from './diagrams/gas-locker-drain-overboard.ts';
import { gasLockerDrainShared } from './diagrams/gas-locker-drain-shared.ts';
import { gasPressureGauge } from './diagrams/gas-pressure-gauge.ts';
import { hoseBoresMatched } from './diagrams/hose-bores-matched.ts';
import { hoseClampKind } from './diagrams/hose-clamp-kind.ts';
import { osmoticBlister } from './diagrams/osmotic-blister.ts';
import { rudderBearingWorn } from './diagrams/rudder-bearing-worn.ts';
import { seacockLeverAndPlug } from './diagrams/seacock-lever-and-plug.ts';
import { seacockOnFitting } from './diagrams/seacock-on-fitting.ts';
import { sternGland } from './diagrams/stern-gland.ts';
import { toiletVentedLoop } from './diagrams/toilet-vented-loop.ts';

/** Every diagram of the catalogue, by its key. */
export const diagrams: Readonly<Record<string, Drawing>> = byKey([
  gasLockerDrainOverboard,
  gasLockerDrainShared,
  gasPressureGauge,
  seacockOnFitting,
  seacockLeverAndPlug,
  hoseBoresMatched,
  hoseClampKind,
  exhaustElbowWasted,
  exhaustRunRise,
  bilgeFloatSwitch,
  ballastIronScrap,
  deckFittingCore,
  backingPlate,
  osmoticBlister,
  toiletVentedLoop,
  batteryTerminalKind,
  batteryBoxVented,
  batterySecured,
  bulkheadChafe,
  rudderBearingWorn,
  sternGland,
  fuelFillAndVent,
]);

function byKey(list: readonly Drawing[]): Record<string, Drawing> {
  return Object.fromEntries(list.map((drawing) => [drawing.key, drawing]));
}
