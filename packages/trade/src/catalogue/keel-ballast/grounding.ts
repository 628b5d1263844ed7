import { closedSpaces, underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const keelGroundingEntries = entries(
  {
    key: 'keel-floors-cracked',
    system: 'keel-ballast',
    title: 'Floors or inner grid broken behind the keel after grounding',
    lookFor:
      'A blow on the front of the keel drives its after end up into the hull. Look there first: cracked floors, a hollow or lifted sole, inner grid parted from the hull, fresh paint. Look forward also, where bolts were pulled down, and tap the grid along its flanges. Outside, look for cracks behind the keel and a gap ahead of it. Ask directly about groundings.',
    observed:
      'Cracked structure was found {location}, {extent}. The inner grid sounds loose and a feeler of {size} enters at its flange.',
    consequence:
      'Floors hand the keel’s load to the hull. When they have gone, the bottom bends round the bolts at every roll and the keel can tear out.',
    recommendation:
      'Do not sail her. Have a naval architect or structural specialist examine with sole and tanks out, and lay down the repair; a yard used to grid bonding carries it out. Draw keel bolts at the same time.',
    urgency: 'before-use',
    lower: 'Within days for hairline cracks in paint only, with bonding that sounds firm throughout.',
    harms: ['structural-failure', 'flooding', 'loss-of-control'],
    references: ['ISO 12215-9', 'ISO 12215-6'],
    worksheets: ['sounding-map'],
    cautions: [underBoat, closedSpaces],
    related: ['keel-joint-open', 'keel-bolts-wasted', 'hull-framing-detached', 'hull-impact-damage'],
    alsoCalled: ['matrix', 'liner', 'grounding', 'keel web', 'inner moulding'],
  },
  {
    key: 'keel-encapsulated-damaged',
    system: 'keel-ballast',
    title: 'Encapsulated keel worn through or holding water',
    lookFor:
      'Look at the bottom and front edge for laminate worn to fibres, cracks, and dripping that goes on after lift-out. Sound the sides for voids between ballast and shell. In the bilge find whether the ballast is sealed over and whether that cap is whole. Brown drips suggest iron.',
    observed:
      'The keel laminate is worn through {location}, {extent}. Water was still dripping from it when examined.',
    consequence:
      'Water reaches the ballast and, if the inner cap is not tight, the boat. Iron ballast rusts and swells; frost splits the shell.',
    recommendation:
      'Drain and dry the keel, cut back to sound laminate and build it up to more than the first thickness with a wear layer. Fill voids and restore the cap over the ballast.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where water can pass from the keel to the inside.',
    lower: 'Next lay-up for scuffed gelcoat with whole laminate.',
    harms: ['flooding', 'deterioration', 'structural-failure'],
    references: [],
    worksheets: ['sounding-map', 'moisture-map'],
    cautions: [underBoat],
    related: ['keel-ballast-iron-scrap'],
    alsoCalled: ['encapsulated ballast', 'long keel', 'bilge keel', 'shoe'],
  },
  {
    key: 'keel-lifting-gear-worn',
    system: 'keel-ballast',
    title: 'Lifting keel or centreboard: pivot, wire or winch worn',
    lookFor:
      'With the weight taken on blocks by the yard, try the plate sideways and fore and aft and look at pivot, bushes, pads and stops. Look for broken strands at the wire’s end and sheave, a kinked pennant, a slipping winch brake and leaks at the case and pivot bolt. A little side play is design; grooves and elongated holes are not.',
    observed:
      'The lifting gear {location} is worn: {item} shows {size} of play. Broken strands were found in the wire.',
    consequence:
      'A keel let go falls hard on its stops and can crack the case, or stay down where the water is shallow. A worn pivot leaks and may let the plate drop out.',
    recommendation:
      'Renew wire or pennant, pivot and bushes with the boat lifted and the plate held. Repair the case where it leaks. Fit or restore the lock that keeps a ballasted plate down at sea where the design has one.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where the wire is about to part or the pivot leaks freely.',
    lower: 'Next lay-up for knocking that is only slack pads.',
    harms: ['flooding', 'loss-of-control', 'injury'],
    references: ['ISO 12215-9'],
    worksheets: [],
    cautions: [
      underBoat,
      'A plate may fall at any time: keep hands and head out of the slot unless the yard has it on blocks.',
    ],
    related: ['keel-floors-cracked'],
    alsoCalled: ['swing keel', 'centerboard', 'drop keel', 'daggerboard', 'keel pennant'],
  },
  {
    key: 'keel-iron-rusting',
    system: 'keel-ballast',
    title: 'Cast iron keel rusting through its coating',
    lookFor:
      'Rust blisters and scale on the faces of the keel, mostly at edges and where slings or pads bear. Knock one off and look beneath: a shallow grey or pitted face is common. Look at the joint for a separate rust line, which is another matter.',
    observed: 'The iron keel is rusted through its coating {location}, {extent}, to a depth of about {size}.',
    consequence:
      'The loss of metal is small against the section. It slows the boat, spoils the antifouling and feeds more rust each season.',
    recommendation:
      'Blast or grind to clean metal on a dry day, prime within hours with an epoxy made for iron, build up the system the maker directs, then antifoul.',
    urgency: 'next-layup',
    lower: 'A note for a few spots.',
    harms: ['deterioration'],
    references: [],
    worksheets: [],
    cautions: [underBoat],
    related: ['keel-joint-open'],
    alsoCalled: ['rusty keel', 'cast iron', 'scale'],
  },
);
