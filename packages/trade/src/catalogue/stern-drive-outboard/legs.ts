import { underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';
import { machineryStopped } from '../shaft-propeller/cautions.ts';

/** A leg can drop when its rams leak or somebody aboard touches the trim. */
export const raisedLeg =
  'Chock a raised leg or outboard before working beneath it: it can drop. Keep fingers out of the hinge.';

/** Stern drives and saildrives: what keeps the water out, what holds and moves the leg, and what is painted on it. */
export const legEntries = entries(
  {
    key: 'stern-drive-bellows-cracked',
    system: 'stern-drive-outboard',
    title: 'Stern-drive bellows cracked or past their age',
    lookFor:
      'Turn the leg hard over to each side and raise it, and look into every fold with a lamp and mirror; cracks close when the leg is straight. Examine the large bellows of the drive shaft, that of the exhaust where fitted and the small one of the shift cable, with their clamps. Marine growth inside the folds cuts them. Ask for the date they were last renewed.',
    observed: 'On the {side} drive {item} was cracked {location}, {extent}. Its age was given as {age}.',
    consequence:
      'The drive-shaft bellows lies below the waterline and opens into the boat when it splits. Before that, a weep ruins the gimbal bearing and the universal joints inside.',
    recommendation:
      'Have all bellows and their clamps renewed together by a stern-drive mechanic, and the joints and gimbal bearing examined while the leg is off. Keep to the maker’s interval from then on.',
    urgency: 'before-use',
    lower:
      'Within 30 days or at the next haul-out when they are only old by record and look sound at full lock.',
    harms: ['flooding', 'deterioration'],
    references: [],
    worksheets: ['flooding-rate'],
    cautions: [underBoat, raisedLeg, machineryStopped],
    related: [
      'stern-drive-gimbal-bearing-rough',
      'stern-drive-exhaust-bellows-missing',
      'stern-drive-steering-play',
    ],
    diagram: 'stern-drive-bellows',
    alsoCalled: ['gaiters', 'boots', 'outdrive bellows', 'shift cable bellows', 'U-joint bellows'],
  },
  {
    key: 'stern-drive-exhaust-bellows-missing',
    system: 'stern-drive-outboard',
    title: 'Exhaust bellows of a stern drive torn or come off',
    lookFor:
      'Look between the transom shield and the leg for a bellows or tube that joins the exhaust passages. Some drives have a plain open tube there by design; the parts list tells. Soot on the transom or other bellows shows a leak. Ask about changed sound and exhaust smell in the cockpit.',
    observed: 'The exhaust bellows of the {side} drive was torn {extent} or off its flange.',
    consequence:
      'It does not let the sea into the boat as the drive-shaft bellows does, but hot gas then plays on that bellows and exhaust rises behind the transom, where it can be drawn into the cockpit and cabin.',
    recommendation:
      'Renew it with clamps and, where the maker asks, adhesive, and examine the bellows beside it for heat damage.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when exhaust is smelt in the cockpit or the drive-shaft bellows is scorched.',
    harms: ['poisoning', 'flooding', 'deterioration'],
    references: [],
    worksheets: [],
    cautions: [
      underBoat,
      raisedLeg,
      'Exhaust contains carbon monoxide: do not stay low behind the transom with the engine running.',
    ],
    related: ['stern-drive-bellows-cracked'],
    alsoCalled: ['exhaust boot', 'exhaust gaiter'],
  },
  {
    key: 'stern-drive-gimbal-bearing-rough',
    system: 'stern-drive-outboard',
    title: 'Gimbal bearing or universal joints rough or rusted',
    lookFor:
      'Ashore, listen at the transom while the propeller is turned slowly by hand with the leg turned to each side; grinding or clicking that follows the angle is the bearing or joints. On trial a growl that grows in turns tells the same. Water or rust-coloured grease in the bellows is proof. Some noise at full lock is usual.',
    observed:
      'The {side} drive was rough and noisy when turned by hand. Rust or water was found in the bellows, {extent}.',
    consequence:
      'A bearing or joint that seizes breaks the drive shaft and can cut the bellows open from inside.',
    recommendation:
      'Have the leg taken off, the bearing and joints renewed, engine alignment checked with the maker’s bar and new bellows fitted. Find out where the water came in.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when it grinds with the leg straight or rust water runs from the bellows.',
    harms: ['flooding', 'loss-of-control', 'deterioration'],
    references: [],
    worksheets: [],
    cautions: [underBoat, raisedLeg, machineryStopped],
    related: ['stern-drive-bellows-cracked', 'stern-drive-water-in-oil'],
    alsoCalled: ['U-joints', 'cardan joint', 'input bearing', 'growling in turns'],
  },
  {
    key: 'stern-drive-steering-play',
    system: 'stern-drive-outboard',
    title: 'Play in the steering hinge of the stern drive',
    lookFor:
      'With the wheel held still by a helper, push the foot of the leg from side to side and up and down, and watch where the movement is: in the upper swivel shaft, its clamp and seal, the hinge pins, or the steering arm inside. Water stains under the arm inside the transom come from a worn swivel seal. Play in the cable or cylinder shows at the helm too.',
    observed:
      'The {side} leg could be moved by {reading} at its foot with the wheel held still. The play was {location}.',
    consequence:
      'The boat wanders, and at speed the leg can shake from side to side. A worn swivel lets water in above the waterline and can come apart at its arm.',
    recommendation:
      'Have the hinge pins, bushes, swivel shaft and seals renewed by a stern-drive mechanic; it often means taking the transom unit off, so plan it with other work there.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the boat shakes or wanders at speed, or the steering arm is loose on its shaft.',
    lower: 'A note when the play is within the maker’s limit.',
    harms: ['loss-of-control', 'flooding'],
    references: [],
    worksheets: [],
    cautions: [underBoat, raisedLeg],
    related: ['stern-drive-bellows-cracked'],
    alsoCalled: ['gimbal ring', 'swivel shaft', 'upper pivot', 'slop in the outdrive'],
  },
  {
    key: 'stern-drive-water-in-oil',
    system: 'stern-drive-outboard',
    title: 'Water in the gear oil of the leg',
    lookFor:
      'With the leg down and rested overnight, loosen the lower drain screw and look at the first drops: clear water, milk or rust are faults, as is fine glitter on the magnet. A little paste on the magnet is normal. Look at the propeller shaft seal for fishing line, at the seal ring of the drain screws, and at the oil level in the bottle aboard.',
    observed:
      'The gear oil drawn from the {side} leg was milky or watery, {extent}. The likely way in was {item}.',
    consequence:
      'Water takes away the film of oil and rusts gears and bearings. In frost it bursts the casing.',
    recommendation:
      'Drain it, have the leg pressure and vacuum tested for the leaking seal, renew the seals and examine gears and bearings before refilling. Change the oil again after a few hours of running.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when there is rust or metal in the oil; before frost in any case.',
    lower: 'At the next haul-out when only a trace of cloud is seen in oil of unknown age.',
    harms: ['deterioration', 'loss-of-control', 'pollution'],
    references: [],
    worksheets: [],
    cautions: [
      underBoat,
      machineryStopped,
      'Catch the oil. Never exceed the maker’s pressure when testing a casing: seals and covers can fly.',
    ],
    related: ['stern-drive-gimbal-bearing-rough', 'outboard-propeller-hub-slips'],
    alsoCalled: ['milky gear oil', 'emulsified oil', 'lower unit', 'gearcase', 'saildrive oil'],
  },
  {
    key: 'stern-drive-trim-rams-leak',
    system: 'stern-drive-outboard',
    title: 'Trim or tilt rams leak or the leg sinks by itself',
    lookFor:
      'Raise the leg, mark a ram and look again after an hour. Examine rods for pits, ends for play and missing pins, hoses for rust at their ends and chafe in the hinge, and the pump for its oil level. A leg that sinks slowly with dry rams has a leak in the pump valves.',
    observed:
      'The rams of the {side} leg were pitted and wet with oil {location}. The leg sank {reading} in an hour.',
    consequence:
      'A leg that will not stay up can touch on drying out; one that will not hold down kicks up astern and gives no stopping power. Burst hoses spill oil.',
    recommendation:
      'Have rams rebuilt or renewed and rusted hoses replaced by a stern-drive mechanic, then refill with the maker’s fluid and prove the travel both ways.',
    urgency: 'next-layup',
    raise: 'Within 30 days when the leg kicks up in astern or a pin or its lock is missing.',
    harms: ['loss-of-control', 'pollution', 'injury'],
    references: [],
    worksheets: [],
    cautions: [
      raisedLeg,
      'Hydraulic oil under pressure can pierce skin: search for leaks with card, not fingers.',
    ],
    related: ['stern-drive-steering-play'],
    alsoCalled: ['power trim', 'tilt cylinders', 'hydraulic rams'],
  },
  {
    key: 'saildrive-diaphragm-aged',
    system: 'stern-drive-outboard',
    title: 'Saildrive hull diaphragm past its age or weeping',
    lookFor:
      'Look round the rubber ring between saildrive and hull for its date, for cracks, oil and stretched places, and for water in the space between its two layers where there is a sensor. Test the alarm of the sensor. From below look at the fairing flap, which is not the seal. The makers give an age at which it is to be renewed.',
    observed:
      'The hull diaphragm of the saildrive was marked {date}. It was cracked or oily {extent}. Its water alarm, when tested, gave {reading}.',
    consequence:
      'The diaphragm closes an opening in the hull as large as a hatch. If it lets go, the boat fills faster than any pump can clear.',
    recommendation:
      'Have it renewed at the maker’s interval by the engine maker’s agent, with the engine drawn forward, and prove the alarm.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when it weeps, is cracked or oil-soaked, or there is water between its layers.',
    lower: 'At the next haul-out when it looks sound and has only just passed its date.',
    harms: ['flooding'],
    references: [],
    worksheets: ['flooding-rate'],
    cautions: [underBoat, 'Never lever or cut at a diaphragm afloat.', machineryStopped],
    related: ['stern-drive-water-in-oil', 'corrosion-stern-drive-anodes'],
    alsoCalled: ['sail drive', 'hull seal', 'rubber gasket', 'diaphragm seal'],
  },
  {
    key: 'stern-drive-copper-paint',
    system: 'stern-drive-outboard',
    title: 'Copper antifouling on or touching an aluminium leg',
    lookFor:
      'Red or dark, heavy paint on a leg, often brushed over from the hull, with bubbles and white powder under it. Ask what was used and read the tin: many copper paints say “not for aluminium”. See whether the hull’s copper paint stops short of the leg and the transom shield. White powder on bare edges alone may only be tired paint.',
    observed:
      'The {side} leg was painted {extent} with antifouling that appeared to contain copper. White corrosion was seen {location}.',
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
  },
);
