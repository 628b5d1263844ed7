import { batteries } from './batteries.ts';
import { engineFront, flameArrester, pumpWeeping } from './engine.ts';
import { extinguisher, extinguisherStamp } from './extinguishers.ts';
import { gasBottle, gasHoseDated, gasLocker } from './gas.ts';
import { deckCoreWeep, hullBlisters, moistureMeter, stanchionCrack } from './hull-plastic.ts';
import { deckRust, hullAnode, platePitting, utGauge } from './hull-steel.ts';
import { blowerDuct, exhaustElbow, exhaustLagging, steeringRam } from './machinery-space.ts';
import { cruiser, motorVessel } from './motor-boats.ts';
import type { Picture } from './picture.ts';
import { drainHose, gateValve, seacock } from './plumbing.ts';
import { drivePropeller, propeller } from './propellers.ts';
import { anchorShackle, chainplateWeep, steeringCable, swage, toggle } from './rig.ts';
import { flares, liferaftLabel, navLight } from './safety.ts';
import { anodeWasted, bellowsCracked, cutlessBearing, rudderGap } from './stern-gear.ts';
import { bilgeFloat, fuelHoseCracked, fuelTankLabel } from './tanks.ts';
import { shoreInlet, wiringJoint, wiringJumble } from './wiring.ts';
import { yacht } from './yacht.ts';

/** Draws a subject on an empty picture. */
export type Scene = (p: Picture) => void;

/** Every subject that can be pictured, by key. */
export const scenes = {
  'larkspindle-ashore': (p) => yacht(p, 'ashore', 'Larkspindle', 'white'),
  'larkspindle-afloat': (p) => yacht(p, 'afloat', 'Larkspindle', 'white'),
  'tamarack-ashore': (p) => yacht(p, 'ashore', 'Tamarack Fig', 'green'),
  'oxbow-ashore': (p) => motorVessel(p, 'ashore', 'Oxbow Lantern'),
  'oxbow-afloat': (p) => motorVessel(p, 'afloat', 'Oxbow Lantern'),
  'pepper-ashore': (p) => cruiser(p, 'ashore', 'Pepper Skiffle'),
  'pepper-afloat': (p) => cruiser(p, 'afloat', 'Pepper Skiffle'),
  'seacock-corroded': (p) => seacock(p, 'corroded'),
  'seacock-scraped': (p) => seacock(p, 'scraped'),
  'hose-split': (p) => drainHose(p, 'split'),
  'hose-single-clip': (p) => drainHose(p, 'single-clip'),
  'hose-renewed': (p) => drainHose(p, 'renewed'),
  'gate-valve-steel': gateValve,
  'gas-locker-blocked': (p) => gasLocker(p, 'blocked'),
  'gas-locker-clear': (p) => gasLocker(p, 'clear'),
  'gas-hose-dated': (p) => gasHoseDated(p, 2015),
  'gas-regulator': (p) => gasBottle(p, 'old'),
  'gas-regulator-new': (p) => gasBottle(p, 'new'),
  'battery-loose': (p) => batteries(p, 'loose'),
  'battery-strapped': (p) => batteries(p, 'strapped'),
  'battery-single': (p) => batteries(p, 'single'),
  'shore-inlet-scorched': (p) => shoreInlet(p, 'scorched'),
  'shore-inlet-new': (p) => shoreInlet(p, 'new'),
  'wiring-jumble': wiringJumble,
  'wiring-joint': wiringJoint,
  'swage-cracked': (p) => swage(p, 'cracked'),
  'swage-new': (p) => swage(p, 'new'),
  'chainplate-weep': chainplateWeep,
  'rigging-toggle': toggle,
  'steering-cable': steeringCable,
  'anchor-shackle': anchorShackle,
  'stanchion-crack': stanchionCrack,
  'deck-core-weep': deckCoreWeep,
  'deck-moisture-meter': (p) => moistureMeter(p, 'deck', '26'),
  'hull-moisture-meter': (p) => moistureMeter(p, 'hull', '21'),
  'hull-blisters': hullBlisters,
  'ut-gauge-plate': utGauge,
  'plate-pitting': platePitting,
  'hull-anode': hullAnode,
  'deck-rust': deckRust,
  propeller,
  'drive-propeller': drivePropeller,
  'cutless-bearing': cutlessBearing,
  'anode-wasted': anodeWasted,
  'rudder-gap': rudderGap,
  'bellows-cracked': bellowsCracked,
  'engine-front': (p) => engineFront(p, 'whole'),
  'engine-belt': (p) => engineFront(p, 'belt'),
  'pump-weeping': pumpWeeping,
  'exhaust-elbow': exhaustElbow,
  'exhaust-lagging': exhaustLagging,
  'steering-ram': steeringRam,
  'flame-arrester': flameArrester,
  'blower-duct': blowerDuct,
  'bilge-float': bilgeFloat,
  'fuel-tank-label': fuelTankLabel,
  'fuel-hose-cracked': fuelHoseCracked,
  'extinguisher-red': (p) => extinguisher(p, -0.78),
  'extinguisher-green': (p) => extinguisher(p, 0.06),
  'extinguisher-stamp': (p) => extinguisherStamp(p, '2012'),
  flares: (p) => flares(p, 2025),
  'liferaft-label': (p) => liferaftLabel(p, '2024-11'),
  'nav-light': navLight,
} satisfies Record<string, Scene>;

export type SceneKey = keyof typeof scenes;
