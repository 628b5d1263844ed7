import { underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';
import { machineryStopped, turningShaft } from './cautions.ts';

/** What carries the shaft: water-lubricated bearings, brackets, and the line of the shaft. */
export const shaftBearingEntries = entries(
  {
    key: 'shaft-bearing-worn',
    system: 'shaft-propeller',
    title: 'Water-lubricated shaft bearing worn',
    lookFor:
      'With the boat ashore, lift the propeller by hand and watch the gap between shaft and bearing; do it again sideways. Measure the play with feelers or a dial gauge, and look for rubber torn, lifted from its shell or worn through to the metal on one side. A new rubber bearing has a little play so that water can flow; that is not wear. Wear on one side only points to misalignment.',
    observed:
      'The water-lubricated shaft bearing {location} was worn: the shaft could be lifted by {reading} on a shaft of {size}. Its lining was worn away {extent}.',
    consequence:
      'A slack bearing lets the shaft and propeller whip. That wears the shaft itself, loosens the stern gland and bracket, and is felt as vibration at cruising speed.',
    recommendation:
      'Withdraw the shaft, measure it where it ran in the bearing, and renew the bearing. If the shaft is worn too, have it built up and ground, or renewed; a new bearing alone will not cure it. Check engine alignment afterwards, afloat.',
    urgency: 'next-layup',
    raise:
      'Treat as before use when the rubber is gone, the shell is loose, or the shaft knocks in its bearing under way.',
    lower:
      'A note when the play is near that of a new bearing and there is no vibration: measure again at the next haul-out.',
    harms: ['deterioration', 'loss-of-control', 'flooding'],
    references: ['ABYC P-6'],
    worksheets: ['shaft-wear'],
    cautions: [underBoat, machineryStopped],
    related: ['shaft-worn-in-bearing', 'shaft-bracket-loose', 'shaft-misaligned', 'stern-gland-leaking'],
    diagram: 'shaft-worn-bearing',
    alsoCalled: ['cutlass bearing', 'stern bearing', 'strut bearing', 'stern tube bearing', 'cutlass bush'],
  },
  {
    key: 'shaft-worn-in-bearing',
    system: 'shaft-propeller',
    title: 'Propeller shaft itself worn where it runs in its bearing',
    lookFor:
      'Slide the shaft a little or push the propeller aft with the coupling open, so that the part which runs in the bearing can be seen and felt. Measure its diameter with a micrometer there and again on shaft that has never touched a bearing. A step that catches a finger nail, scoring, or a polished waist is wear. Also measure under the packing of the stern gland.',
    observed:
      'The shaft was worn {location}: it measured {reading} where it runs in the bearing against {size} beside it. It was scored {extent}.',
    consequence:
      'A new bearing does not cure a worn shaft: bearings are made for the full diameter, so the play remains and the step quickly wears the new rubber. The strength of the shaft also falls with the third power of its diameter.',
    recommendation:
      'Have the shaft drawn and measured by a propeller or machine shop. Build it up and grind it true, shift it so that sound metal runs in the bearings where the design allows, or renew it. Renew the bearings at the same time.',
    urgency: 'next-layup',
    raise:
      'Within 30 days or before use when cracks, deep grooves or a marked loss of diameter are found; the shaft may break.',
    lower: 'A note when only a polish can be seen and no difference can be measured.',
    harms: ['loss-of-control', 'flooding', 'deterioration'],
    references: ['ABYC P-6'],
    worksheets: ['shaft-wear', 'shaft-size'],
    cautions: [underBoat, machineryStopped],
    related: ['shaft-bearing-worn', 'shaft-crevice-corrosion', 'shaft-misaligned'],
    diagram: 'shaft-worn-bearing',
    alsoCalled: ['grooved shaft', 'scored shaft', 'shaft wear', 'prop shaft worn'],
  },
  {
    key: 'shaft-bracket-loose',
    system: 'shaft-propeller',
    title: 'Shaft bracket loose or weeping at its base',
    lookFor:
      'Push and pull the propeller hard and watch the joint between bracket and hull; feel for movement with a finger across it. Look for cracked fairing, broken sealant, rust or weeping there, and inside for loose nuts, wet core or crushed laminate at the bolts. Tap a bronze bracket: a dull sound, pink colour or cracks point to loss of zinc or fatigue.',
    observed:
      'The {side} shaft bracket moved at its base when the propeller was pushed by hand. The joint was cracked or weeping {extent}.',
    consequence:
      'The bracket holds the shaft in line and its bolts pass through the hull. If it comes loose it can open a leak below the waterline or let the propeller strike the hull.',
    recommendation:
      'Have a yard remove the bracket, examine bolts, bracket and laminate, make good any wet or crushed structure, and rebed it on a sound backing. Check the line of the shaft when refitting.',
    urgency: 'before-use',
    lower:
      'Within 30 days, afloat on her mooring only, when only the fairing is cracked, nothing moves and the inside is dry.',
    harms: ['flooding', 'loss-of-control', 'structural-failure'],
    references: ['ABYC P-6'],
    worksheets: [],
    cautions: [underBoat, machineryStopped],
    related: ['shaft-bearing-worn', 'propeller-blades-damaged', 'shaft-misaligned'],
    alsoCalled: ['P-bracket', 'A-bracket', 'strut', 'loose strut'],
  },
  {
    key: 'shaft-misaligned',
    system: 'shaft-propeller',
    title: 'Engine and propeller shaft out of line',
    lookFor:
      'Look for a shaft that lies to one side in its stern tube or gland, bearing wear on one side, bright dust under flexible mounts and vibration that changes with speed. With the boat afloat, rigged and loaded as usual for a day, slacken the coupling and try the gap between the faces with feelers at four places, turning the shaft between. An alignment taken ashore means little. A flexible coupling hides misalignment but does not remove it.',
    observed:
      'The faces of the shaft coupling were out of line by {reading} at a coupling of {size}; the shaft did not lie central in its tube.',
    consequence:
      'Each turn bends the shaft. That wears the bearing, gland and gearbox seal, loosens the coupling and engine mounts, and in time can break the shaft by fatigue.',
    recommendation:
      'Have a marine engineer examine the engine mounts and line up the engine afloat, then lock the mounts and record the gaps measured. One thousandth of the coupling diameter across the faces is a usual limit; follow the gearbox maker’s figure where there is one.',
    urgency: 'next-layup',
    raise: 'Within 30 days when vibration is strong, the gland runs hot, or mounts or bolts have come loose.',
    lower: 'A note when it was measured ashore only: have it measured again afloat.',
    harms: ['deterioration', 'loss-of-control', 'flooding'],
    references: ['ABYC P-6'],
    worksheets: ['shaft-wear'],
    cautions: [machineryStopped, turningShaft],
    related: ['shaft-bearing-worn', 'shaft-coupling-insecure', 'stern-gland-leaking', 'shaft-bent'],
    alsoCalled: ['alignment', 'coupling faces', 'engine alignment'],
  },
  {
    key: 'shaft-bent',
    system: 'shaft-propeller',
    title: 'Propeller shaft bent',
    lookFor:
      'Turn the shaft slowly by hand and watch the propeller cone against a pointer fixed to the hull, or set a dial gauge against the shaft close to the bracket. A run-out that comes back once every turn is a bend; slack that shows only when the shaft is lifted is bearing wear. Look for grounding marks, bent blades and a line of rope or net near it.',
    observed: 'The shaft on the {side} side ran out by {reading} {location} when turned by hand.',
    consequence:
      'A bent shaft shakes the boat, wears bearing and gland on one side, and bends to and fro at each turn, so it can break by fatigue.',
    recommendation:
      'Withdraw the shaft and have a propeller shop check it between centres, straighten or renew it, and match it with the propeller on its taper. Examine bracket, coupling and gearbox for damage from the same blow.',
    urgency: 'next-layup',
    raise: 'Before use when vibration is strong, the gland leaks at speed or a bracket has moved.',
    harms: ['loss-of-control', 'flooding', 'deterioration'],
    references: ['ABYC P-6'],
    worksheets: ['shaft-size'],
    cautions: [underBoat, machineryStopped],
    related: ['propeller-blades-damaged', 'shaft-bracket-loose', 'shaft-misaligned'],
    alsoCalled: ['shaft run-out', 'prop shaft bent'],
  },
);
