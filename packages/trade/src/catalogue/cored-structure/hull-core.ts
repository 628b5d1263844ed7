import { underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const coredHullEntries = entries(
  {
    key: 'cored-hull-wet',
    system: 'cored-structure',
    title: 'Wet core in the hull about skin fittings or struts',
    lookFor:
      'Learn first where the hull is cored; the edge often shows as a print line or a change in note. Meter and sound round every skin fitting, transducer, strut, thruster tube and grounding mark, outside and, where the inner skin is bare, inside. Water that goes on dripping from a drilled or drawn fitting days after lift-out comes from the core. Never judge from one reading, nor compare with another boat.',
    observed:
      'Raised readings and a dull note were found round {item} {location}, {extent}; the reading was {reading}.',
    consequence:
      'Hull panels rely on skins and core acting as one. Wet core shears, the skins part under slamming, and the damage spreads unseen from a single unsealed hole.',
    recommendation:
      'Have drainage holes or core samples taken to find the extent, by agreement with the owner. Renew wet core and close with a laminate to a repair plan by a naval architect or a specialist yard. Reduce each opening to solid laminate with no core before a fitting goes back.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where skins have parted, bulged or crack when pressed.',
    lower: 'Next lay-up for a damp ring of a hand’s breadth round one fitting that sounds firm.',
    harms: ['structural-failure', 'flooding', 'deterioration'],
    references: ['ISO 12215-5', 'ISO 12215-6'],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: [underBoat],
    related: ['cored-edge-unsealed', 'cored-skin-debonded', 'hull-impact-damage', 'through-hull-not-backed'],
    alsoCalled: ['cored hull', 'sandwich hull', 'water in core', 'balsa hull', 'foam core'],
  },
  {
    key: 'cored-skin-debonded',
    system: 'cored-structure',
    title: 'Skin parted from its core',
    lookFor:
      'Sound with a light hammer or coin in a close pattern and mark every edge; a parted skin clacks while a good one rings. Press it: it may pant. Look along the surface at night with a low light, and at panels that slam, near bulkheads and under the mast. Parted skins may be bone dry, so a meter cannot find them.',
    observed: 'The outer skin sounds hollow {location}, {extent}, and moves when pressed by hand.',
    consequence:
      'A sandwich panel whose skin has come loose keeps a small part of its stiffness and strength. The loose part grows each time it bends.',
    recommendation:
      'Have the cause found: impact, poor bonding, heat or water. Small dry voids may be injected; larger ones need the skin cut out and the panel rebuilt. A naval architect should judge panels in the bottom forward.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use for bottom panels forward and near keel, struts or chain plates.',
    lower: 'Next lay-up for a small void in a lightly loaded deck.',
    harms: ['structural-failure', 'flooding'],
    references: ['ISO 12215-5'],
    worksheets: ['sounding-map', 'moisture-map'],
    cautions: [underBoat],
    related: ['cored-hull-wet', 'cored-deck-wet-fittings', 'hull-impact-damage', 'cored-transom-wet'],
    alsoCalled: ['delamination', 'skin debond', 'core shear', 'disbond'],
  },
  {
    key: 'cored-transom-wet',
    system: 'cored-structure',
    title: 'Wet or rotten core in the transom',
    lookFor:
      'Lift gently on the tilted outboard or stern drive and watch the transom at bolts, drain and well corners for movement or water squeezed out. Sound the face, look for bulges, cracked corners, stained bolts and a lower edge that will not dry. A transom rebuilt in solid laminate may read high from a wet surface yet ring clear.',
    observed:
      'The transom sounds dead {location}, {extent}. Bolts of {item} have drawn in and brown water shows at the lower hole.',
    consequence:
      'The transom takes the whole thrust and weight of the drive. Once its core is soft the mounting works loose, steering alters, and the engine may tear away with part of the boat.',
    recommendation:
      'Remove the drive and have the core sampled low, at the corners and at each hole. Renew it in material that does not rot, with all holes sealed, to the thickness the engine maker asks for.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where the transom or mounting moves, or is bulged or cracked.',
    lower: 'Next lay-up for a damp patch round one drain that is firm and rings.',
    harms: ['loss-of-control', 'flooding', 'structural-failure'],
    references: ['ISO 12215-6'],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: [
      underBoat,
      'Do not stand beneath a tilted drive or rely on its hydraulics to hold it; use the support lock.',
    ],
    related: ['hull-stringers-decayed', 'cored-edge-unsealed'],
    alsoCalled: ['transom rot', 'outboard transom', 'plywood transom'],
  },
);
