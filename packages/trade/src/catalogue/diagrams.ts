import type { Drawing } from '../drawing/svg.ts';
import { anchorConnector } from './diagrams/anchor-connector.ts';
import { anchorSwivel } from './diagrams/anchor-swivel.ts';
import { anodeContact } from './diagrams/anode-contact.ts';
import { backingPlate } from './diagrams/backing-plate.ts';
import { ballastIronScrap } from './diagrams/ballast-iron-scrap.ts';
import { batteryBoxVented } from './diagrams/battery-box-vented.ts';
import { batterySecured } from './diagrams/battery-secured.ts';
import { batteryTerminalKind } from './diagrams/battery-terminal-kind.ts';
import { batteryTerminalsCovered } from './diagrams/battery-terminals-covered.ts';
import { bilgeFloatSwitch } from './diagrams/bilge-float-switch.ts';
import { bulkheadChafe } from './diagrams/bulkhead-chafe.ts';
import { chainplateCrevice } from './diagrams/chainplate-crevice.ts';
import { deckFittingCore } from './diagrams/deck-fitting-core.ts';
import { exhaustElbowWasted } from './diagrams/exhaust-elbow-wasted.ts';
import { exhaustRunRise } from './diagrams/exhaust-run-rise.ts';
import { extinguisherReady } from './diagrams/extinguisher-ready.ts';
import { fuelFillAndVent } from './diagrams/fuel-fill-and-vent.ts';
import { furlerHalyard } from './diagrams/furler-halyard.ts';
import { fuseNearBattery } from './diagrams/fuse-near-battery.ts';
import { galvanicIsolator } from './diagrams/galvanic-isolator.ts';
import { gasLockerDrainOverboard } from './diagrams/gas-locker-drain-overboard.ts';
import { gasLockerDrainShared } from './diagrams/gas-locker-drain-shared.ts';
import { gasPressureGauge } from './diagrams/gas-pressure-gauge.ts';
import { hoseBoresMatched } from './diagrams/hose-bores-matched.ts';
import { hoseClampKind } from './diagrams/hose-clamp-kind.ts';
import { liferaftRelease } from './diagrams/liferaft-release.ts';
import { osmoticBlister } from './diagrams/osmotic-blister.ts';
import { propellerNutOrder } from './diagrams/propeller-nut-order.ts';
import { rigToggle } from './diagrams/rig-toggle.ts';
import { rudderBearingWorn } from './diagrams/rudder-bearing-worn.ts';
import { seacockLeverAndPlug } from './diagrams/seacock-lever-and-plug.ts';
import { seacockOnFitting } from './diagrams/seacock-on-fitting.ts';
import { shackleMousing } from './diagrams/shackle-mousing.ts';
import { shaftWornBearing } from './diagrams/shaft-worn-bearing.ts';
import { shorePowerLead } from './diagrams/shore-power-lead.ts';
import { sidelightObscured } from './diagrams/sidelight-obscured.ts';
import { splitPinOpened } from './diagrams/split-pin-opened.ts';
import { steeringStops } from './diagrams/steering-stops.ts';
import { sternDriveAnodes } from './diagrams/stern-drive-anodes.ts';
import { sternDriveBellows } from './diagrams/stern-drive-bellows.ts';
import { sternGland } from './diagrams/stern-gland.ts';
import { swageCrackCrosswise } from './diagrams/swage-crack-crosswise.ts';
import { swageCrackLengthwise } from './diagrams/swage-crack-lengthwise.ts';
import { toiletVentedLoop } from './diagrams/toilet-vented-loop.ts';
import { windlassJoiningLink } from './diagrams/windlass-joining-link.ts';
import { wiringSupported } from './diagrams/wiring-supported.ts';

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
  shackleMousing,
  anchorConnector,
  windlassJoiningLink,
  anchorSwivel,
  propellerNutOrder,
  swageCrackLengthwise,
  swageCrackCrosswise,
  shaftWornBearing,
  anodeContact,
  sternDriveAnodes,
  splitPinOpened,
  rigToggle,
  chainplateCrevice,
  galvanicIsolator,
  wiringSupported,
  batteryTerminalsCovered,
  fuseNearBattery,
  shorePowerLead,
  extinguisherReady,
  sidelightObscured,
  sternDriveBellows,
  liferaftRelease,
  steeringStops,
  furlerHalyard,
]);

function byKey(list: readonly Drawing[]): Record<string, Drawing> {
  return Object.fromEntries(list.map((drawing) => [drawing.key, drawing]));
}
