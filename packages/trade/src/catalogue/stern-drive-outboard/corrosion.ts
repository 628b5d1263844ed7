import { entries } from '../entry.ts';
import { machineryStopped, underLiftedBoat } from '../shaft-propeller/cautions.ts';
import { raisedLeg } from './legs.ts';

/** Aluminium in sea water, and the transom it hangs on. */
export const legCorrosionEntries = entries(
  {
    key: 'stern-drive-anodes-wasted',
    system: 'stern-drive-outboard',
    title: 'Anodes of the aluminium leg missing, wasted, painted or of the wrong metal',
    lookFor:
      'Find every place the parts list gives for an anode: cavitation plate, trim rams, gimbal housing, propeller hub, and for a saildrive behind the propeller. Judge what is left by volume, scrape one for metal, and measure the contact between anode and leg with a meter. Painted, loose or unwasted anodes beside pitted metal are doing nothing. Read the metal marked on them: magnesium is for fresh water only, and zinc is weak on aluminium in fresh and brackish water.',
    observed:
      'On the {side} leg {count} anodes were missing, painted or wasted {extent}. The leg was pitted {location}, the deepest pit about {reading}. The anodes were of {material}.',
    consequence:
      'An aluminium leg with stainless and bronze parts beside it has nothing to spare. Without working anodes it becomes the anode itself, and housings are eaten through, often from under the paint, within a season.',
    recommendation:
      'Fit new anodes of the metal the drive maker names for the water she lies in, on bare bright metal, unpainted, and prove the contact of each and the bonding straps across the hinge. Where the loss was quick, have the shore supply and isolator tested before blaming the anodes.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before use when a housing is pitted near to through, or the leg leaks oil or water because of it.',
    lower: 'At the next haul-out when anodes are half gone and the leg is bright.',
    harms: ['deterioration', 'flooding', 'loss-of-control'],
    references: ['ABYC E-2'],
    worksheets: ['anode-life', 'hull-potential', 'galvanic-couple'],
    cautions: [underLiftedBoat, raisedLeg, machineryStopped],
    related: ['stern-drive-copper-paint', 'stern-drive-water-in-oil'],
    alsoCalled: [
      'zincs',
      'sacrificial anodes',
      'outdrive anodes',
      'magnesium',
      'aluminium anodes',
      'aluminum',
    ],
  },
  {
    key: 'stern-drive-copper-paint',
    system: 'stern-drive-outboard',
    title: 'Copper antifouling on or touching an aluminium leg',
    lookFor:
      'Red or dark, heavy paint on a leg, often brushed over from the hull, with bubbles and white powder under it. Ask what was used and read the tin: many copper paints say “not for aluminium”. See whether the hull’s copper paint stops short of the leg and the transom shield. White powder on bare edges alone may only be tired paint.',
    observed:
      'The {side} leg had been painted with antifouling that appeared to contain copper, {extent}. White corrosion was seen {location}.',
    consequence:
      'Copper beside aluminium in sea water makes a cell that pits the aluminium wherever the paint system beneath is scratched. More anodes do not cure it.',
    recommendation:
      'Strip the leg by a method that spares the aluminium, prime with the system the paint maker gives for it and use an antifouling made for aluminium. Leave a bare or copper-free band on the hull round the leg, and keep anodes free of paint.',
    urgency: 'next-layup',
    raise: 'Within 30 days when pits are deep or oil weeps from them.',
    lower: 'A note when the paint stops just short and the leg is sound.',
    harms: ['deterioration'],
    references: ['ABYC E-2'],
    worksheets: ['galvanic-couple', 'hull-potential'],
    cautions: [
      underLiftedBoat,
      'Old antifouling is poisonous as dust: no dry sanding, and a proper mask and gloves.',
    ],
    related: ['stern-drive-anodes-wasted'],
    alsoCalled: ['bottom paint', 'cuprous oxide', 'antifoul on outdrive'],
  },
  {
    key: 'stern-drive-transom-wet',
    system: 'stern-drive-outboard',
    title: 'Transom wet or soft around the stern drive or outboard',
    lookFor:
      'Sound the transom inside and out round the cut-out, bolts, drain plugs and swim-ladder bolts. Look for cracks running from the corners, brown weeping at bolts, and washers sunk into the skin. Have somebody stand on the raised leg or pull the outboard by its head and watch the transom move. A moisture meter shows where to ask, not what is there: outline the area and say so.',
    observed:
      'The transom sounded dull {location}, {extent}, with meter readings of {reading}. Movement was seen when the leg was loaded.',
    consequence:
      'The transom carries thrust and weight. Once its core is wet and rotten, bolts loosen, the seal round the drive leaks and the transom can crack or tear.',
    recommendation:
      'Have a yard open it in a small place to prove the core, then rebuild it as a structural repair to an agreed plan, and seal every opening. Check the torque of the drive bolts again after some hours of running.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the transom moves, is cracked through or the drive leaks into the boat.',
    lower: 'At the next haul-out when it sounds firm and only readings are high.',
    harms: ['structural-failure', 'flooding', 'loss-of-control'],
    references: [],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: [
      underLiftedBoat,
      raisedLeg,
      'Only load the leg by hand or with one person’s weight; stop if anything cracks or moves sharply.',
    ],
    related: ['outboard-mounting-insecure'],
    alsoCalled: ['transom rot', 'rotten transom', 'transom core', 'soft transom'],
  },
);
