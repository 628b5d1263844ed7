import { underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';
import { machineryStopped } from '../shaft-propeller/cautions.ts';
import { raisedLeg } from './legs.ts';

/** Aluminium in sea water, and the transom it hangs on. */
export const legCorrosionEntries = entries({
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
    underBoat,
    'Old antifouling is poisonous as dust: no dry sanding, and a proper mask and gloves.',
  ],
  related: ['corrosion-stern-drive-anodes'],
  alsoCalled: ['bottom paint', 'cuprous oxide', 'antifoul on outdrive'],
});
