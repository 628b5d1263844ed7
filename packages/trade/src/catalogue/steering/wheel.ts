import { pinchedHands } from '../cautions.ts';
import { entries } from '../entry.ts';

/** From the hand to the linkage: wheel, tiller, chain and push-pull cable. */
export const steeringHandEntries = entries(
  {
    key: 'steering-push-pull-cable-stiff',
    system: 'steering',
    title: 'Steering cable of an outboard or stern drive stiff or seized',
    lookFor:
      'Turn the wheel from stop to stop with the engine still; it should take the same small effort all the way. Disconnect the rod at the engine to tell a stiff cable from a stiff swivel. Look for a split jacket, rust where the rod slides in its tube, tight bends, and the fastenings at engine and helm, which must be locked nuts or split pins.',
    observed:
      'Between wheel and {side} engine the steering was stiff, {reading} at the rim. The cable was split or rusted {location}.',
    consequence:
      'A stiff cable breaks its helm gear or its own core, and it does so when turned hard, at speed or beside a quay.',
    recommendation:
      'Renew the cable and free and grease the swivel tube; do not try to oil a sealed cable. Lock every joint. Where the engine’s power is above what mechanical steering is made for, fit hydraulic.',
    urgency: 'before-use',
    lower: 'Within 30 days when it is only stiff from want of grease and frees as it is worked.',
    harms: ['loss-of-control', 'injury'],
    references: ['ABYC P-17', 'ISO 8848'],
    worksheets: [],
    cautions: [pinchedHands],
    related: ['outboard-mounting-insecure', 'stern-drive-steering-play', 'steering-hydraulic-leaking'],
    alsoCalled: ['push-pull cable', 'rack steering', 'rotary helm', 'tilt tube'],
  },
  {
    key: 'steering-chain-worn',
    system: 'steering',
    title: 'Pedestal chain rusted, stretched or badly joined',
    lookFor:
      'Open the pedestal under the compass and turn the wheel to each end: look for rust, stiff links, teeth hooked on the sprocket, and the joins of chain to wire with their split pins. The clip of a joining link must be whole and seated all round. At hard over the wire joints must stay clear of the sprocket.',
    observed:
      'Inside the pedestal the chain was rusted or stiff {extent}. At its join to the wire {item} was missing or worn.',
    consequence: 'The chain jumps a tooth or parts at its join, and the wheel turns without the rudder.',
    recommendation:
      'Renew chain and sprocket together in stainless of the maker’s pitch, with locked joins, grease lightly and set the tension with the rudder amidships.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when it has jumped, a pin is missing or a link is cracked.',
    harms: ['loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [pinchedHands],
    related: ['steering-cable-frayed', 'steering-stops-missing', 'steering-emergency-tiller-unusable'],
    alsoCalled: ['wheel chain', 'sprocket', 'binnacle', 'pedestal steering'],
  },
  {
    key: 'steering-tiller-head-worn',
    system: 'steering',
    title: 'Tiller split, or loose on its rudder head',
    lookFor:
      'Hold the rudder still and work the tiller up, down and sideways: movement shows between head and stock (key, taper or squared end) and between head and tiller (bolts). Look for splits at the bolts in a wooden tiller, in glue lines of a laminated one, and rot where it enters the head. Tape on a tiller is a reason to look.',
    observed:
      'The tiller moved by {reading} at its end with the rudder held, from play at {item}. The wood was split {extent}.',
    consequence:
      'A tiller breaks or its head slips when leaned on in a gust. A loose key cuts its way round the stock.',
    recommendation:
      'Renew the tiller or its bolts and bushes, and have a loose head refitted with a new key or pinned by a yard.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when a split runs to a bolt, or the head turns on the stock.',
    lower: 'A note for slight slack in the hinge bolts.',
    harms: ['loss-of-control', 'injury'],
    references: [],
    worksheets: [],
    cautions: [pinchedHands],
    related: ['steering-rudder-stock-corroded', 'steering-rudder-bearing-play', 'steering-quadrant-loose'],
    alsoCalled: ['tiller head', 'rudder head', 'tiller extension'],
  },
);
