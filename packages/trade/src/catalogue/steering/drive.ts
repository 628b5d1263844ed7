import { pinchedHands } from '../cautions.ts';
import { entries } from '../entry.ts';

export const steeringDriveEntries = entries(
  {
    key: 'steering-cable-frayed',
    system: 'steering',
    title: 'Steering wire frayed, slack or off its sheave',
    lookFor:
      'Wipe along the wire with a rag, which catches on broken strands, and look closely where it bends round sheaves and at the quadrant’s grooves. Try the tension with the wheel held; see that sheaves line up, turn and have guards, and that clamps at the ends are right and doubled. Turn the wheel from lock to lock while watching.',
    observed: 'The steering wire {location} has {count} broken strands at {item} and is slack.',
    consequence:
      'Wire breaks strand by strand at the bend, then at once, most likely under load in bad weather.',
    recommendation:
      'Replace both wires together with their end fittings, align and refix the sheaves, set the tension as the maker asks. Carry a spare.',
    urgency: 'before-use',
    lower: 'Within days for slackness alone with whole strands.',
    harms: ['loss-of-control'],
    references: ['ISO 8847'],
    worksheets: [],
    cautions: [pinchedHands, 'Broken strands go through gloves: use a rag, not a hand.'],
    related: ['steering-quadrant-loose', 'steering-emergency-tiller-unusable', 'steering-stops-missing'],
    alsoCalled: ['cable steering', 'quadrant wire', 'wire steering', 'pulley'],
  },
  {
    key: 'steering-quadrant-loose',
    system: 'steering',
    title: 'Quadrant or tiller arm loose on the rudder stock',
    lookFor:
      'Hold the rudder still and have the wheel worked either way: watch for movement between arm and stock, polished metal, rust dust or a worn key. Try bolts and locking devices by spanner, without undoing. A cracked casting shows at the clamp ears. Marks made with paint across the joint show later movement.',
    observed: 'There is movement of {size} between {item} and the rudder stock {location}.',
    consequence: 'Once the key or bolts give, the wheel turns but the rudder does not.',
    recommendation:
      'Dismantle, renew key and bolts and lock them properly; replace a cracked or worn arm. Mark the joint with paint.',
    urgency: 'before-use',
    lower: 'Within days for movement you can feel but not see, with all bolts tight and locked.',
    harms: ['loss-of-control'],
    references: ['ISO 8847'],
    worksheets: [],
    cautions: [pinchedHands],
    related: ['steering-cable-frayed', 'steering-rudder-bearing-play'],
    alsoCalled: ['rudder key', 'tiller head', 'steering arm'],
  },
  {
    key: 'steering-hydraulic-leaking',
    system: 'steering',
    title: 'Hydraulic steering leaking, spongy or slipping',
    lookFor:
      'Turn to hard over and hold: the wheel should stop firmly and not creep. Look at ram seals, pipe ends, chafed hoses and the pump shaft; wipe dry and look again after working it. Check the level at the helm. Sponginess that goes on after topping up means air or a worn pump. Test the autopilot pump as well.',
    observed: 'Fluid leaks at {item} {location}. At full lock the wheel creeps about {reading} in a minute.',
    consequence: 'The helm loses grip without warning once air gets in or the seal gives way.',
    recommendation:
      'Have the leak put right, seals or hose renewed with the maker’s parts, the system filled with the right fluid and bled. Spilled fluid must not go overboard.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where control is lost or a hose is about to go.',
    lower: 'Next lay-up for one sweating joint with no creep.',
    harms: ['loss-of-control', 'pollution'],
    references: ['ISO 10592', 'ABYC P-21'],
    worksheets: [],
    cautions: [
      pinchedHands,
      'Never search for a pressure leak with a hand: fluid can be driven through skin. Relieve pressure before undoing a joint.',
    ],
    related: ['steering-stops-missing', 'steering-emergency-tiller-unusable'],
    alsoCalled: ['hydraulic helm', 'ram', 'helm pump', 'power steering'],
  },
  {
    key: 'steering-stops-missing',
    system: 'steering',
    title: 'Rudder stops missing, loose or broken',
    lookFor:
      'Turn the rudder to each side and see what stops it: it should be the stops, before gear, ram or hull are touched. Look for a bent or cracked stop, loose fastenings and marks where the blade or quadrant has struck. Stops are built to hold when she goes astern against the rudder.',
    observed: 'The rudder stop on the {side} side {location} is missing or broken; {item} touches first.',
    consequence: 'Going astern the rudder may slam over and break cable, ram or autopilot, or jam hard over.',
    recommendation:
      'Fit or repair stops strong enough for the rudder, bolted to structure, and set the travel equal to both sides.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where the gear strikes the hull or jams over centre.',
    harms: ['loss-of-control', 'flooding'],
    references: ['ISO 12215-8'],
    worksheets: [],
    cautions: [pinchedHands],
    related: ['steering-quadrant-loose', 'steering-cable-frayed'],
    diagram: 'steering-stops',
    alsoCalled: ['rudder stop', 'end stop'],
  },
  {
    key: 'steering-emergency-tiller-unusable',
    system: 'steering',
    title: 'Emergency tiller missing or cannot be used',
    lookFor:
      'Ask for it and try it, fully: fit it to the stock head, turn it both ways and see that it clears wheel, seats and lockers. The deck plate should open with the key aboard. See whether one person can hold her with it, and whether the drive can be disconnected.',
    observed: 'The emergency tiller {location} could not be fitted because {item} is in the way.',
    consequence: 'When the wheel gear fails there is nothing to steer with.',
    recommendation:
      'Make or get one that fits, clear its way, keep it where it can be reached, and practise with it.',
    urgency: 'next-layup',
    raise: 'Within days before a passage or where the gear is already doubtful.',
    lower: 'A note for small boats that an engine or oar can steer.',
    harms: ['loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [pinchedHands],
    related: ['steering-cable-frayed', 'steering-hydraulic-leaking'],
    alsoCalled: ['emergency steering', 'spare tiller'],
  },
);
