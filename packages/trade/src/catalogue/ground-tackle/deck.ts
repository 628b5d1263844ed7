import { entries } from '../entry.ts';
import { chainRunning, liftedAnchor } from './cautions.ts';

/** Bow roller, windlass, snubber and locker. */
export const groundTackleDeckEntries = entries(
  {
    key: 'anchor-stowage-insecure',
    system: 'ground-tackle',
    title: 'Anchor held on the roller by the windlass or its brake only',
    lookFor:
      'With the chain slack, push the anchor up and forward: a pin through the roller’s cheeks or a lashing to a strong point must hold it. Look at the chain stopper for play and a spring that is tired. Look at dents in the hull below the roller, where it has swung.',
    observed: 'On the bow roller the anchor was held by {item} alone. No pin or lashing was fitted.',
    consequence:
      'In a seaway the windlass brake slips and the anchor runs out at sea, or swings and holes the bow.',
    recommendation:
      'Fit a pin or a lashing and a chain stopper that bears the load when she is under way and at anchor.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use on a fast boat or one going to sea.',
    harms: ['loss-of-control', 'injury', 'flooding'],
    references: [],
    worksheets: [],
    cautions: [chainRunning, liftedAnchor],
    related: ['anchor-roller-distorted', 'anchor-snubber-missing'],
    alsoCalled: ['anchor lock', 'chain stopper', 'roller pin'],
  },
  {
    key: 'anchor-roller-distorted',
    system: 'ground-tackle',
    title: 'Bow roller bent, its sheave seized or its fastenings weak',
    lookFor:
      'Sight along the cheeks for a spread or a twist and try the sheave by hand. Look below for bolts through a backing plate, wet core and cracks in the laminate. Load it sideways by hand, as the chain does when she yaws. Check that there is a keep to hold the chain in.',
    observed:
      'The bow roller was bent by {reading} on its {side} side and its fastenings had moved {extent}.',
    consequence: 'The chain climbs out and saws at the bow, or the roller tears away and lets the water in.',
    recommendation: 'Have it straightened or renewed, with a backing plate, a keep and a sheave that turns.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when it moves on its bolts or is cracked.',
    lower: 'A note when only the sheave is stiff.',
    harms: ['structural-failure', 'loss-of-control'],
    references: ['ISO 15084', 'ABYC H-40'],
    worksheets: ['sounding-map'],
    cautions: [liftedAnchor],
    related: ['anchor-stowage-insecure', 'deck-fitting-no-backing'],
    alsoCalled: ['stem head', 'anchor roller', 'bow fitting'],
  },
  {
    key: 'anchor-snubber-missing',
    system: 'ground-tackle',
    title: 'No snubber or chain stopper: the windlass takes the load at anchor',
    lookFor:
      'Ask how she lies at anchor, and look for a stretchy line with a hook or a hitch to take the chain to a cleat, and a stopper that can hold it. Look at the windlass base for cracks and movement. A windlass lifts; its gypsy and shaft are not meant to hold her in a swell.',
    observed: 'No snubber or chain stopper was found. The windlass alone holds the chain at anchor.',
    consequence:
      'Shock loads break the shaft, strip gears or lift the windlass from the deck, and the chain runs out.',
    recommendation:
      'Carry a stretchy snubber made off to a strong point and a stopper, and see that the windlass is not the strong point.',
    urgency: 'note',
    raise: 'Within 30 days when the base has moved or is cracked.',
    harms: ['structural-failure', 'loss-of-control', 'injury'],
    references: ['ABYC H-40'],
    worksheets: ['rode'],
    cautions: [chainRunning],
    related: ['deck-fitting-no-backing', 'anchor-stowage-insecure'],
    alsoCalled: ['snubber', 'bridle', 'chain hook', 'devil’s claw'],
  },
  {
    key: 'windlass-unsafe-controls',
    system: 'ground-tackle',
    title: 'Windlass without a breaker, or foot switches exposed',
    lookFor:
      'Follow the supply to a breaker or fuse near the battery that suits motor and cable, and find the isolator. Press each switch: its cover must close and it must spring back. Nothing may start because a foot slips or water lies on it. Measure the voltage at the motor while it lifts, and try clutch and emergency handle.',
    observed:
      'The windlass supply was protected by {item}. On deck {count} foot switches had lost their covers. Its terminals stood at {reading} under load.',
    consequence:
      'A short circuit in the cable makes a fire. A switch touched by accident lets the chain run, or pulls a hand in.',
    recommendation:
      'Have a marine electrician fit a breaker or fuse that suits the cable and motor near the battery, renew the switches and covers, and mark an isolator that the crew knows.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when there is no overload protection, or it runs by itself.',
    lower: 'A note when only a cover is missing and the breaker is off when not in use.',
    harms: ['fire-explosion', 'injury', 'loss-of-control'],
    references: ['ABYC E-11', 'ISO 13297'],
    worksheets: ['dc-voltage-drop', 'conductor-ampacity'],
    cautions: [chainRunning, 'Open the battery switch before touching terminals: a short circuit burns.'],
    related: ['deck-fitting-no-backing', 'anchor-joining-link-oversize'],
    alsoCalled: ['windlass breaker', 'foot switch', 'solenoid', 'anchor winch'],
  },
  {
    key: 'anchor-locker-drain-blocked',
    system: 'ground-tackle',
    title: 'Anchor locker drain blocked or open to the cabin',
    lookFor:
      'Pour in a bucket of water: it should leave overboard soon, and none should come into the hull at the bottom, bulkhead or cable holes. Look for mud, leaves and chain lying in wet rust. A drain to the bilge is a fault unless it can be shut off. Look at the lid’s catch, as it opens in a seaway.',
    observed: 'The drain of the anchor locker was blocked {extent}. Water poured in came out {location}.',
    consequence:
      'A full locker adds weight to the bow and drives water below; chain rusts in it. A lid that lifts lets the sea in.',
    recommendation:
      'Clear or enlarge the drain, seal the locker from the cabin and fit a catch or lashing on its lid.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the locker is open to the accommodation and she goes to sea.',
    lower: 'A note when it is mud only.',
    harms: ['flooding', 'deterioration'],
    references: [],
    worksheets: ['flooding-rate'],
    cautions: [chainRunning],
    related: ['anchor-chain-worn', 'deck-fitting-no-backing'],
    alsoCalled: ['chain locker', 'scupper', 'drain hole'],
  },
);
