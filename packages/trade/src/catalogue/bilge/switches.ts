import { batteriesAndTerminals, bilgeBeforePumping } from '../cautions.ts';
import { entries } from '../entry.ts';

export const bilgeSwitchEntries = entries(
  {
    key: 'bilge-float-switch-poor',
    system: 'bilge',
    title: 'Float switch loose, obstructed or set athwartships',
    lookFor:
      'The switch should lie fore and aft, its arm pointing aft, in the shelter of a frame. Look for one set athwartships, where rolling and the rush of water work the arm; hanging on its wires; or with hoses, wires or rubbish in the way of the arm. Lift the float by hand, then pour clean water in and watch it start and stop. See that it sits no lower than the pump’s intake, or the pump will run on dry.',
    observed:
      'The float switch {location} is loose on its base and set athwartships. When lifted by hand its arm caught on {item}.',
    consequence:
      'A float that sticks down leaves the pump off while she fills; one that sticks up runs the battery flat and the pump dry, after which there is no pump.',
    recommendation:
      'Fix the switch firmly on a base, fore and aft with its arm pointing aft, in the shelter of a frame and clear of hoses and debris. Support and seal its wiring above bilge water. Prove it by lifting it and by water, and test it monthly.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before she is next left afloat where the automatic pump cannot start.',
    lower: 'Next lay-up where she is a day boat kept ashore.',
    harms: ['flooding'],
    references: ['ISO 15083', 'ISO 8849', 'ABYC H-22'],
    worksheets: [],
    cautions: [bilgeBeforePumping, batteriesAndTerminals],
    related: [
      'bilge-pump-wiring-poor',
      'bilge-alarm-missing',
      'bilge-strainer-blocked',
      'bilge-limbers-blocked',
      'bilge-pump-loose',
    ],
    diagram: 'bilge-float-switch',
    alsoCalled: ['level switch', 'float switch', 'automatic bilge switch', 'bilge switch'],
  },
  {
    key: 'bilge-pump-wiring-poor',
    system: 'bilge',
    title: 'Bilge pump wiring spliced in the wet or wrongly supplied',
    lookFor:
      'Follow the wires: joints lying in the bilge, crimp connectors with no sealed sleeve, and household twists are common. See that the automatic side takes its feed through its own fuse from a point still live when the main switch is off, and that the fuse fits pump and wire. Feel for heat while it runs. Measure voltage at the pump while working.',
    observed:
      'The wiring of the bilge pump {location} is joined below the level of bilge water. Voltage at the pump was {reading} while running.',
    consequence:
      'A corroded joint steals the voltage the pump needs, then fails altogether, often unseen, since automatic pumps run out of sight.',
    recommendation:
      'Remake joints above the highest bilge water with sealed crimp sleeves, fuse as the pump maker says, and supply the automatic side so that it works with the boat shut down. Have a marine electrician do the work.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before she is next left where the pump does not work automatically.',
    lower: 'Next lay-up where joints are wet but voltage is sound.',
    harms: ['flooding', 'fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11', 'ABYC H-22'],
    worksheets: ['dc-voltage-drop'],
    cautions: [batteriesAndTerminals, bilgeBeforePumping],
    related: [
      'bilge-float-switch-poor',
      'bilge-pump-flow-poor',
      'dc-connections-poor',
      'dc-overcurrent-missing',
    ],
    alsoCalled: ['butt splice', 'automatic bilge pump', 'wiring in bilge'],
  },
  {
    key: 'bilge-alarm-missing',
    system: 'bilge',
    title: 'High-water alarm missing or silent',
    lookFor:
      'Look for a separate float above the pump’s switch and work it: the alarm should sound where the helmsman and those asleep can hear it. A running light for the pump at the helm helps but is no alarm. Check its battery or feed with the boat shut down.',
    observed: 'No high-water alarm was found {location}. The only sign of pumping is {item}.',
    consequence:
      'A pump that works or fails unseen hides a leak until the water rises to batteries and engine.',
    recommendation:
      'Fit an alarm independent of the pump’s switch, above it, with sounder on deck and below, and test it with the pump.',
    urgency: 'next-layup',
    raise: 'Within days where the bilge cannot be seen from the helm or people sleep aboard.',
    lower: 'A note for an open boat.',
    harms: ['flooding'],
    references: ['ABYC H-22'],
    worksheets: [],
    cautions: [batteriesAndTerminals],
    related: ['bilge-float-switch-poor'],
    alsoCalled: ['bilge alarm', 'water ingress alarm'],
  },
);
