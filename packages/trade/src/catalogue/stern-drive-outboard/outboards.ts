import { entries } from '../entry.ts';
import { raisedLeg } from './legs.ts';

const startedEngine =
  'Test starting only with the propeller clear of people and lines, the boat well moored or the propeller off, and water at the intakes.';

/** Outboards: how they are held, stopped and loaded. */
export const outboardEntries = entries(
  {
    key: 'outboard-cut-off-missing',
    system: 'stern-drive-outboard',
    title: 'Engine cut-off cord missing or the switch does not stop the engine',
    lookFor:
      'See that the cord is aboard, with its clip sound and its coil long enough for the helm but no longer. With the engine idling, pull the clip: the engine must stop at once, and should not start again until the clip is back. Do this at every helm position and with wireless types by their own test. A spare clip left in the switch defeats it.',
    observed: 'No working cut-off was found at the helm {location} for the {side} engine: {item}.',
    consequence:
      'When the helmsman is thrown out, the boat goes on, usually turning, and comes back over the person in the water.',
    recommendation:
      'Fit a working cut-off switch and the right cord at each helm, keep a spare clip for the crew to recover whoever fell, and wear it whenever under way. Local rules may require its use.',
    urgency: 'before-use',
    lower: 'A note when a working device is fitted and only a spare clip is lacking.',
    harms: ['injury', 'loss-of-control', 'unlawful'],
    references: ['46 USC 4312', 'ABYC A-33'],
    worksheets: [],
    cautions: [startedEngine],
    related: ['engine-neutral-start'],
    alsoCalled: ['kill cord', 'kill switch', 'lanyard', 'dead man’s switch', 'ECOS'],
  },
  {
    key: 'outboard-mounting-insecure',
    system: 'stern-drive-outboard',
    title: 'Outboard held by clamp screws only, or its bolts loose',
    lookFor:
      'Look for through bolts with large washers or a plate inside, tight and sealed; small engines should have at least locked clamps and a safety line or chain to a strong point. Try the engine by its head, both ways. Look for worn swivel bushes, cracks in the bracket and a transom pad crushed under the screws.',
    observed:
      'The outboard of {size} was held by {item}; {count} bolts were missing or loose, and no safety line was fitted.',
    consequence:
      'Clamp screws shake loose. The engine then lifts off in a turn, takes its fuel line with it, or swings into the boat.',
    recommendation:
      'Bolt it through as its maker’s instructions show, with washers or a backing plate and sealant in the holes. Where it must be removable, lock the clamps and fit a safety line that bears the engine’s weight.',
    urgency: 'before-use',
    lower: 'Within 30 days for a small engine with tight clamps that only lacks its safety line.',
    harms: ['loss-of-control', 'injury'],
    references: [],
    worksheets: [],
    cautions: [raisedLeg],
    related: ['cored-transom-wet', 'outboard-overpowered'],
    alsoCalled: ['clamp brackets', 'transom bolts', 'safety chain'],
  },
  {
    key: 'outboard-overpowered',
    system: 'stern-drive-outboard',
    title: 'Outboard more powerful or heavier than the boat’s plate allows',
    lookFor:
      'Read the builder’s or capacity plate and compare it with the power on the engine’s own plate, not on its cowl. Count the weight also: modern engines of equal power are often heavier. With people aft, look how near the transom cut-out and cockpit drains come to the water. Where there is no plate, say so and use the worksheet where it applies.',
    observed: 'The boat was marked for {size} and carried an outboard of {reading}.',
    consequence:
      'Too much power makes the boat hard to hold at speed and overloads the transom; too much weight sinks the stern and lets the sea over it. An insurer may refuse a claim.',
    recommendation:
      'Fit an engine within the plate, or have the builder or a naval architect confirm in writing what she may carry. Until then, do not use her beyond the marked power.',
    urgency: 'before-use',
    lower: 'A note when only the weight differs slightly and the freeboard aft is as built.',
    harms: ['loss-of-control', 'flooding', 'unlawful', 'structural-failure'],
    references: ['33 CFR 183.53', 'ISO 11592', 'ISO 14945'],
    worksheets: ['safe-power', 'safe-loading'],
    cautions: [],
    related: ['outboard-mounting-insecure', 'cored-transom-wet'],
    alsoCalled: ['capacity plate', 'builder’s plate', 'maximum horsepower'],
  },
  {
    key: 'outboard-cooling-weak',
    system: 'stern-drive-outboard',
    title: 'Cooling water of the outboard weak or blocked',
    lookFor:
      'Run it with water at the intakes and watch the tell-tale: a steady, lukewarm stream that grows with speed. A weak one may only be a blocked outlet; clear it with soft line, then look again. Ask when the impeller was last renewed and whether the engine is flushed. Test the overheat alarm by its own method.',
    observed:
      'The cooling stream of the {side} outboard was weak at {reading}. Its impeller was {age} old by record.',
    consequence: 'An outboard short of water overheats within minutes; pistons and gaskets go first.',
    recommendation:
      'Have the impeller, its housing and the intake screens renewed or cleared and the passages flushed; prove the thermostat and alarm.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when the stream stops or the alarm sounds.',
    lower: 'A note when clearing the tell-tale restored it.',
    harms: ['loss-of-control', 'deterioration'],
    references: [],
    worksheets: ['engine-readings'],
    cautions: [startedEngine, 'Never run it dry, even for seconds: the impeller is ruined.'],
    related: ['stern-drive-water-in-oil'],
    alsoCalled: ['tell-tale', 'pee stream', 'water pump', 'impeller'],
  },
  {
    key: 'outboard-propeller-hub-slips',
    system: 'stern-drive-outboard',
    title: 'Rubber hub of the propeller slips; fishing line at its seal',
    lookFor:
      'Mark hub and blades with one line of paint and look after a run at full throttle: a line that no longer meets has slipped. The engine races in gear without pushing. Take the propeller off and look behind it for fishing line, a cut seal and a missing thrust washer. Grease the splines and see the nut locked on refitting.',
    observed:
      'The propeller of the {side} leg slipped on its hub at {reading}. Fishing line was wound behind it, {extent}.',
    consequence:
      'A slipping hub gives no thrust when it is wanted, and line cuts the seal and lets water into the gears.',
    recommendation:
      'Have the hub renewed or fit another propeller of the right size, renew the seal when cut or when the oil is milky, and fit the nut with its lock.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when it slips at low power.',
    lower: 'A note when only line was found and the oil is clear.',
    harms: ['loss-of-control', 'pollution'],
    references: [],
    worksheets: ['propeller-slip'],
    cautions: [raisedLeg, 'Take the key out and the cut-off clip off before touching the propeller.'],
    related: ['stern-drive-water-in-oil', 'propeller-nut-unlocked'],
    alsoCalled: ['spun hub', 'spun prop', 'shear pin'],
  },
);
