import { acAboardEntries } from './ac-electrical/aboard.ts';
import { acShoreEntries } from './ac-electrical/shore.ts';
import { accessEntries } from './access/machinery.ts';
import { accommodationEntries } from './accommodation/safety.ts';
import { bilgePumpEntries } from './bilge/pumps.ts';
import { bilgeSwitchEntries } from './bilge/switches.ts';
import { coredDeckEntries } from './cored-structure/deck-core.ts';
import { coredHullEntries } from './cored-structure/hull-core.ts';
import { anodeEntries } from './corrosion-protection/anodes.ts';
import { bondingEntries } from './corrosion-protection/bonding.ts';
import { dcBatteryEntries } from './dc-electrical/batteries.ts';
import { dcProtectionEntries } from './dc-electrical/protection.ts';
import { dcWiringEntries } from './dc-electrical/wiring.ts';
import { deckFittingsEntries } from './deck/fittings.ts';
import { deckOpeningsEntries } from './deck/openings.ts';
import { deckStructureEntries } from './deck/structure.ts';
import { electronicsEntries } from './electronics/instruments.ts';
import { engineControlEntries } from './engine/controls.ts';
import { coolingOilEntries } from './engine/cooling-oil.ts';
import { runningEntries } from './engine/running.ts';
import { engineSpaceEntries } from './engine/space.ts';
import type { CatalogueEntry } from './entry.ts';
import { exhaustGasEntries } from './exhaust/gas.ts';
import { wetExhaustEntries } from './exhaust/wet.ts';
import { accommodationFireEntries } from './fire-safety/accommodation.ts';
import { engineSpaceFireEntries } from './fire-safety/engine-space.ts';
import { extinguisherEntries } from './fire-safety/extinguishers.ts';
import { fuelLineEntries } from './fuel/lines.ts';
import { petrolEntries } from './fuel/petrol.ts';
import { fuelTankEntries } from './fuel/tanks.ts';
import { gasApplianceEntries } from './gas/appliances.ts';
import { gasLockerEntries } from './gas/locker.ts';
import { gasPipingEntries } from './gas/piping.ts';
import { groundTackleDeckEntries } from './ground-tackle/deck.ts';
import { anchorJointEntries } from './ground-tackle/joints.ts';
import { rodeEntries } from './ground-tackle/rodes.ts';
import { hullBlistersCoatingsEntries } from './hull/blisters-coatings.ts';
import { hullImpactCracksEntries } from './hull/impact-cracks.ts';
import { hullPlatingEntries } from './hull/plating.ts';
import { hullTimberEntries } from './hull/timber.ts';
import { keelGroundingEntries } from './keel-ballast/grounding.ts';
import { keelBallastEntries } from './keel-ballast/keel.ts';
import { distressEntries } from './life-saving/distress.ts';
import { wornEntries } from './life-saving/worn.ts';
import { lightEntries } from './navigation-lights/lights.ts';
import { headsEntries } from './plumbing-heads/heads.ts';
import { plumbingPipeworkEntries } from './plumbing-heads/pipework.ts';
import { rigJointEntries } from './rig-sails/joints.ts';
import { runningRiggingEntries } from './rig-sails/running.ts';
import { sparEntries } from './rig-sails/spars.ts';
import { terminalEntries } from './rig-sails/terminals.ts';
import { shaftBearingEntries } from './shaft-propeller/bearings.ts';
import { sternGlandEntries } from './shaft-propeller/glands.ts';
import { propellerEntries } from './shaft-propeller/propellers.ts';
import { steeringDriveEntries } from './steering/drive.ts';
import { steeringRudderEntries } from './steering/rudder.ts';
import { steeringHandEntries } from './steering/wheel.ts';
import { legEntries } from './stern-drive-outboard/legs.ts';
import { outboardEntries } from './stern-drive-outboard/outboards.ts';
import { throughHullFittingEntries } from './through-hulls/fittings.ts';
import { seacockHoseEntries } from './through-hulls/seacocks-hoses.ts';

/** Every known defect, by system in the order of the vocabulary. */
export const catalogue: readonly CatalogueEntry[] = [
  ...hullBlistersCoatingsEntries,
  ...hullImpactCracksEntries,
  ...hullPlatingEntries,
  ...hullTimberEntries,
  ...deckFittingsEntries,
  ...deckOpeningsEntries,
  ...deckStructureEntries,
  ...coredDeckEntries,
  ...coredHullEntries,
  ...keelGroundingEntries,
  ...keelBallastEntries,
  ...throughHullFittingEntries,
  ...seacockHoseEntries,
  ...steeringDriveEntries,
  ...steeringRudderEntries,
  ...steeringHandEntries,
  ...sternGlandEntries,
  ...shaftBearingEntries,
  ...propellerEntries,
  ...legEntries,
  ...outboardEntries,
  ...engineControlEntries,
  ...coolingOilEntries,
  ...runningEntries,
  ...engineSpaceEntries,
  ...exhaustGasEntries,
  ...wetExhaustEntries,
  ...fuelLineEntries,
  ...petrolEntries,
  ...fuelTankEntries,
  ...gasApplianceEntries,
  ...gasLockerEntries,
  ...gasPipingEntries,
  ...dcBatteryEntries,
  ...dcProtectionEntries,
  ...dcWiringEntries,
  ...acAboardEntries,
  ...acShoreEntries,
  ...anodeEntries,
  ...bondingEntries,
  ...bilgePumpEntries,
  ...bilgeSwitchEntries,
  ...terminalEntries,
  ...rigJointEntries,
  ...sparEntries,
  ...runningRiggingEntries,
  ...anchorJointEntries,
  ...rodeEntries,
  ...groundTackleDeckEntries,
  ...accommodationFireEntries,
  ...engineSpaceFireEntries,
  ...extinguisherEntries,
  ...distressEntries,
  ...wornEntries,
  ...lightEntries,
  ...headsEntries,
  ...plumbingPipeworkEntries,
  ...accessEntries,
  ...accommodationEntries,
  ...electronicsEntries,
];

const byKey = new Map(catalogue.map((entry) => [entry.key, entry]));

/** The entry of a key, if there is one. */
export const findEntry = (key: string): CatalogueEntry | undefined => byKey.get(key);
