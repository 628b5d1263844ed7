import { entries } from '../entry.ts';

export const dcProtectionEntries = entries(
  {
    key: 'dc-overcurrent-missing',
    system: 'dc-electrical',
    title: 'Battery circuits without a fuse or breaker near the source',
    lookFor:
      'Follow each positive lead away from the batteries, including those added for pumps, autopilots and electronics. The fuse belongs close to the source, before the cable goes through a bulkhead or bundle, and not larger than the cable can carry. Starter cables are a customary exception. A fuse at the consumer does not protect the cable.',
    observed:
      'The positive conductor for {item} leaves the battery {location} without overcurrent protection near the source.',
    consequence:
      'A chafed cable then takes the whole current of the battery until it glows, along its whole length behind the lining.',
    recommendation:
      'Have a marine electrician fit a fuse or breaker close to the battery, of a size to suit the conductor and with enough breaking capacity for the battery.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when the cable is damaged, or for lithium batteries or several batteries joined.',
    harms: ['fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11', '33 CFR 183.455', 'ISO 10133'],
    worksheets: ['conductor-ampacity'],
    cautions: ['Disconnect at the battery before any lead is cut or moved, and cover the loose end.'],
    related: [
      'dc-conductors-too-small',
      'dc-wiring-unsupported',
      'dc-battery-isolator',
      'windlass-unsafe-controls',
    ],
    diagram: 'fuse-near-battery',
    alsoCalled: ['fuse missing', 'circuit breaker', 'unfused', 'main fuse'],
  },
  {
    key: 'dc-battery-isolator',
    system: 'dc-electrical',
    title: 'Battery isolator missing, failing or out of reach',
    lookFor:
      'Turn it and see that the boat goes dead, save for those circuits that should stay live and are known: bilge pump, gas alarm. Feel the switch after running for warmth, and its knob for slackness. It should be reached quickly, outside the battery and engine spaces. Rating and cable size should match.',
    observed: 'The battery isolator {location} did not cut off {item} when it was turned.',
    consequence:
      'An electrical fire goes on burning while the battery feeds it. A switch that fails under way leaves no power.',
    recommendation:
      'Fit a switch of sufficient rating for each battery bank, where it can be worked from outside, labelled; keep a short list of the circuits that stay live.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Within 30 days when the switch is hot or burnt.',
    harms: ['fire-explosion', 'loss-of-control'],
    references: ['ISO 13297', 'ABYC E-11', 'ISO 10133'],
    worksheets: ['conductor-ampacity'],
    cautions: [
      'Never open the isolator with the engine running: the alternator may be destroyed. Shut down first.',
    ],
    related: ['dc-overcurrent-missing', 'dc-terminals-exposed', 'access-seacock-unreachable'],
    alsoCalled: ['battery switch', 'master switch', 'cut-off'],
  },
);
