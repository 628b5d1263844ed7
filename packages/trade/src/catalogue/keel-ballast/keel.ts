import { closedSpaces, underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const keelBallastEntries = entries(
  {
    key: 'keel-ballast-iron-scrap',
    system: 'keel-ballast',
    title: 'Iron scrap in cement ballast rusting and bursting the laminate',
    lookFor:
      'Look in the bilge for rust-stained cement, cracks across its top and a surface that has lifted. Outside, sound the keel stub and sides low down and look along them for bulges, split laminate, brown weeping and cracks that run lengthwise. Hold a magnet to find where iron lies. Bilge water that turns brown though no pump or bolt is rusty points here; blisters alone do not bulge a whole panel.',
    observed:
      'Cement ballast with iron scrap was found {location}. The cement is cracked and rust-stained, and the laminate outside bulges {extent} with brown weeping.',
    consequence:
      'Rust takes up several times the room of the iron it came from. Locked in cement, it has nowhere to go but outward, and splits the cement and then the laminate. Water passes between, hidden, and ballast that breaks up can move.',
    recommendation:
      'Have a yard remove the affected ballast, dry and repair the laminate from both sides, and replace the weight in lead or another ballast that does not rust, bedded in resin and sealed over. Have weight and its position kept as they were; a naval architect should confirm stability where they alter.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where the laminate has split or water comes in.',
    lower: 'Next lay-up where the cement is only stained, dry and tight, and the laminate rings sound.',
    harms: ['structural-failure', 'flooding', 'deterioration'],
    references: [],
    worksheets: ['sounding-map', 'moisture-map', 'inclining', 'roll-period'],
    cautions: [
      underBoat,
      closedSpaces,
      'Do not chip at the laminate to look further while she stands on that part of her keel.',
    ],
    related: ['keel-encapsulated-damaged', 'bilge-limbers-blocked'],
    diagram: 'ballast-iron-scrap',
    alsoCalled: ['boiler punchings', 'steel shot', 'concrete ballast', 'internal ballast', 'rusting ballast'],
  },
  {
    key: 'keel-bolts-wasted',
    system: 'keel-ballast',
    title: 'Keel bolts rusted or wasted',
    lookFor:
      'Clean nuts and plates in the bilge and look for flaking, undersized nuts, crushed washers and stain running from beneath. What counts is the shank at the joint, which cannot be seen: look outside for rust weeps and a gap at the same station. Ask when one was last drawn. Clean heads prove nothing, above all for stainless steel, which corrodes in wet, airless joints.',
    observed:
      'Keel bolts {location} show rust and wasted nuts; {count} are affected. The shanks at the joint could not be seen.',
    consequence:
      'Keel bolts waste where water lies between keel and hull. When one goes the others carry its load; if the keel is lost the boat capsizes.',
    recommendation:
      'Have the yard draw two or more bolts, the worst-looking among them, or have all examined by a method able to show the shank. Renew wasted bolts, washers and plates in a metal that suits the keel, and re-bed the joint.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where a nut has lost most of its section, turns freely, or the joint moves.',
    lower: 'Next lay-up for surface rust only with recent record of drawn bolts.',
    harms: ['structural-failure', 'loss-of-control', 'flooding'],
    references: ['ISO 12215-9'],
    worksheets: [],
    cautions: [
      underBoat,
      closedSpaces,
      'Do not slacken keel bolts to look at them; that is for the yard with the keel supported.',
    ],
    related: ['keel-joint-open', 'keel-floors-cracked', 'keel-bolts-hidden'],
    alsoCalled: ['keel studs', 'keelbolt', 'keel loss'],
  },
  {
    key: 'keel-bolts-hidden',
    system: 'keel-ballast',
    title: 'Keel bolts laminated over or hidden and not examined',
    lookFor:
      'Look for bolt heads under sole boards, tanks, mast foot and laminate caps. Note each that cannot be reached and why. A builder’s drawing tells how many there should be. Laminate over the nuts that is cracked or stained has water beneath.',
    observed: 'Keel bolts {location} are covered by {item} and could not be seen; {count} were examined.',
    consequence:
      'Their condition is unknown. Surveyed from outside only, a wasted bolt can go unnoticed for years.',
    recommendation:
      'Arrange access at the next lift: remove tanks or laminate caps, or have a few bolts drawn or examined by non-destructive testing. Record it for later surveys.',
    urgency: 'next-layup',
    raise:
      'Within days where the joint weeps rust, she has grounded, or the bolts are old and have no record.',
    lower: 'A note where there is recent, documented examination.',
    harms: ['structural-failure'],
    references: ['ISO 12215-9'],
    worksheets: [],
    cautions: [underBoat],
    related: ['keel-bolts-wasted', 'keel-joint-open'],
    alsoCalled: ['keel bolt access', 'glassed-over bolts'],
  },
  {
    key: 'keel-joint-open',
    system: 'keel-ballast',
    title: 'Keel-to-hull joint open or weeping',
    lookFor:
      'Look along the joint soon after lifting, while she hangs and again on her keel, for a line that opens and closes, fresh rust or drips that go on for days. Try it with a feeler. Fine cracks in fairing only, even all round and dry, may be paint; a gap at the forward or after end shows movement from grounding.',
    observed:
      'The keel joint is open {location}, {extent}; a feeler of {size} enters. Water weeps from it and is brown.',
    consequence:
      'Water in the joint feeds corrosion of bolts that nobody sees, and a joint that opens when she is lifted is no longer clamped.',
    recommendation:
      'Have the yard check bolt torque to the builder’s figure; where the gap remains, drop or part the keel, examine bolts and floors, and bed it anew.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where the keel can be felt or seen to move.',
    lower: 'Next lay-up for a dry crack in filler with no rust.',
    harms: ['structural-failure', 'flooding'],
    references: ['ISO 12215-9'],
    worksheets: [],
    cautions: [
      underBoat,
      'Look at the joint of a hanging boat from well to the side; do not reach under her.',
    ],
    related: ['keel-bolts-wasted', 'keel-floors-cracked', 'keel-bolts-hidden'],
    alsoCalled: ['smile', 'keel crack', 'keel stub', 'garboard joint'],
  },
);
