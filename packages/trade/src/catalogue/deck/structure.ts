import { entries } from '../entry.ts';

export const deckStructureEntries = entries(
  {
    key: 'deck-hull-joint-leaking',
    system: 'deck',
    title: 'Hull-to-deck joint leaking or working',
    lookFor:
      'Follow the joint inside lockers and behind shelves for salt trails, rust at fastenings and dark timber, worst where she has been pushed against a quay. Outside, look for gaps in the rubbing strake, cracked sealant and loose rail fastenings. Hose test in short lengths from outside with someone watching within. Chain-plate and stanchion leaks run along the joint, so the drip is not the source.',
    observed:
      'The hull-to-deck joint {location} leaks {extent}. Fastenings there are rusty and the sealant has parted.',
    consequence:
      'Water gets into core, joinery and wiring. A joint that works has fastenings which are losing their hold, and the hull loses stiffness where the rig pulls.',
    recommendation:
      'Remove the rail or strake where it leaks, clean and re-bed the joint with the fastenings renewed, or bond it over inside where design allows. Sealant smeared on the outside is no repair. Have damaged flanges laminated first.',
    urgency: 'next-layup',
    raise: 'Within days where the joint can be seen to move or fastenings have sheared.',
    lower: 'A note for one weep without movement.',
    harms: ['deterioration', 'structural-failure', 'flooding'],
    references: ['ISO 12215-6'],
    worksheets: ['moisture-map'],
    cautions: [],
    related: ['cored-deck-wet-fittings', 'deck-stanchion-base-loose', 'accommodation-leak-stains'],
    alsoCalled: ['toe rail', 'gunwale', 'sheer joint', 'bulwark'],
  },
  {
    key: 'deck-teak-worn',
    system: 'deck',
    title: 'Laid teak deck worn thin with seams and plugs failing',
    lookFor:
      'Measure the depth left at a worn seam or lifted plug. Look for plugs gone, screw heads showing, caulking that has parted from one edge, and planks that dry slowly in patches after rain. Tap for loose planks. Then look beneath: every screw through a cored deck is a possible leak.',
    observed:
      'The teak {location} is about {size} thick at the worst; {count} plugs are missing and the caulking has parted {extent}.',
    consequence:
      'Water runs under the planks and down the screws into the deck. The timber itself wears out in time; the wet core beneath costs more than the teak.',
    recommendation:
      'Renew failed caulking and plugs while thickness allows. Map moisture in the deck beneath before deciding between repair and renewal; a deck laid again should be bonded without screws into core.',
    urgency: 'next-layup',
    raise: 'Within days where the deck is soft underfoot.',
    lower: 'A note for worn but tight planking.',
    harms: ['deterioration', 'structural-failure'],
    references: [],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: [],
    related: ['cored-deck-wet-fittings', 'cored-skin-debonded'],
    alsoCalled: ['teak deck', 'planked deck', 'deck seams'],
  },
  {
    key: 'deck-mast-support-sinking',
    system: 'deck',
    title: 'Deck sinking under a deck-stepped mast',
    lookFor:
      'Lay a straight edge across the coach roof at the mast and sight the curve from ahead. Inside, look for a door frame that binds, a compression post whose foot has sunk or rusted, crushed laminate or a cracked beam. Slack shrouds that were tight before are a sign. A hollow moulded so by the builder is even and uncracked.',
    observed:
      'The deck beneath the mast {location} is hollowed by {size} on a straight edge. The post below shows {reading}.',
    consequence:
      'The mast pushes down with far more than its own weight. As the support sinks the rig goes slack, the mast moves, and the deck may give way.',
    recommendation:
      'Unstep the mast. Have the core, beam, post and its footing on the keel opened and rebuilt in material that does not crush or rot, by a yard used to such work. Tune the rig afterwards.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next sailing where it is cracked, moves, or the shrouds have gone slack.',
    lower: 'Next lay-up for a small, old hollow that has not altered and is dry.',
    harms: ['rig-failure', 'structural-failure'],
    references: ['ISO 12215-6'],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: ['Do not ease shrouds to test it; leave unstepping and slackening to a rigger.'],
    related: [
      'cored-deck-wet-fittings',
      'cored-bolts-crushing',
      'hull-framing-detached',
      'rig-mast-heel-corroded',
    ],
    alsoCalled: ['compression post', 'mast step', 'pillar', 'deck compression', 'mast stepped on deck'],
  },
);
