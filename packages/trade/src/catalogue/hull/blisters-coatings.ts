import { underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const hullBlistersCoatingsEntries = entries(
  {
    key: 'hull-blisters-laminate',
    system: 'hull',
    title: 'Blisters below the waterline with fluid from the laminate',
    lookFor:
      'Sight along the bottom with a low light soon after lift-out; blisters shrink as the hull dries. Open a few with the owner’s leave: fluid that is sour to smell, slippery and acid on test paper comes from the laminate, while clear water between coats of paint is only a coating fault. Note size, spacing and depth, press the laminate under each opened blister with a spike, and sound round it. Look also inside tanks, bilges and wet lockers, where water works from within.',
    observed:
      'Blisters about {size} across were found {location}, {extent}. Of those opened, {count} held sour-smelling fluid and showed bare fibres beneath the gelcoat.',
    consequence:
      'Water taken up by the laminate dissolves parts of the resin and the solution draws in more water, so the blisters grow. Scattered blisters cost little strength, but deep or widespread breakdown softens the outer layers and lowers the value of the boat.',
    recommendation:
      'Have the extent mapped once the hull has been ashore long enough for readings to settle. Scattered blisters may be opened, washed, dried and filled with epoxy; widespread ones call for removal of the affected layers, thorough washing and drying proved by readings, and a new epoxy barrier by a yard used to this work.',
    urgency: 'next-layup',
    raise:
      'Make it more urgent where laminate under the blisters is soft, or where they lie at keel, skeg or strut roots.',
    lower: 'A note suffices for a handful of small blisters in gelcoat only, kept under watch.',
    harms: ['deterioration', 'structural-failure'],
    references: [],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: [
      underBoat,
      'Fluid in a blister is under pressure and acid: wear eye protection and open it from the side. Antifouling dust is poisonous: wet it, wear a mask and gloves.',
    ],
    related: ['hull-blisters-coating-only', 'hull-repair-poor', 'cored-hull-wet'],
    diagram: 'osmotic-blister',
    alsoCalled: ['osmosis', 'osmotic blisters', 'pox', 'hydrolysis', 'wicking'],
  },
  {
    key: 'hull-blisters-coating-only',
    system: 'hull',
    title: 'Blisters and flaking in the bottom paint only',
    lookFor:
      'Lift the edge of a flake and look at what is left on the hull: smooth sound gelcoat or primer means the fault lies in the coats. Blisters between coats open with thin clear water, without sour smell or slippery feel. Count the coats in the edge of a flake; a thick build of old antifouling sheds in sheets. Tap the hull beneath; it should ring.',
    observed:
      'Antifouling is blistered and flaking {location}, {extent}. Where it was lifted, the surface beneath was sound and dry to the eye.',
    consequence:
      'The coats have lost their hold on the hull or on one another. It slows the boat and sheds paint into the water, but does not weaken the hull; a barrier coat lost with it lets water reach the laminate or metal.',
    recommendation:
      'Remove loose paint back to a firm edge, or all of it where the build is thick, collecting the waste as local rules require. Inspect the bared surface, then prime and coat as the paint maker directs.',
    urgency: 'next-layup',
    lower: 'A note where only a few flakes have lifted and the boat is due for painting anyway.',
    harms: ['deterioration', 'pollution'],
    references: [],
    worksheets: [],
    cautions: [underBoat, 'Old antifouling dust and scrapings are poisonous: scrape wet, masked and gloved.'],
    related: ['hull-blisters-laminate'],
    alsoCalled: ['paint delamination', 'bottom paint build-up', 'antifouling peeling'],
  },
  {
    key: 'hull-repair-poor',
    system: 'hull',
    title: 'Earlier hull repair breaking down or badly made',
    lookFor:
      'Look along the topsides for a change of colour, print-through, a hollow or a fill line, and find the same place inside. A sound repair shows overlapping laminate tapered well into the old skin; a poor one shows filler, an abrupt edge, dry fibres or a patch over a clean hole. Sound both faces. Ask for the repairer’s records.',
    observed:
      'An earlier repair was found {location}, {extent}. The edge sounds dull and the laminate inside ends abruptly without a taper.',
    consequence:
      'A patch without a proper taper carries load only by the glue at its edge and may peel under slamming or pressure. Filler in place of laminate has little strength at all.',
    recommendation:
      'Have a yard experienced in structural laminating cut the repair back to sound material and renew it with a tapered scarf to the original thickness or more, with records kept. Inspect the framing behind it at the same time.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before next use where it lies below the waterline and moves when pressed, or weeps.',
    lower: 'Next lay-up for a firm topside repair that is only unsightly.',
    harms: ['structural-failure', 'flooding'],
    references: ['ISO 12215-5'],
    worksheets: ['sounding-map', 'moisture-map'],
    cautions: [underBoat],
    related: ['hull-impact-damage', 'hull-framing-detached'],
    alsoCalled: ['old damage', 'patch', 'filler', 'bog'],
  },
  {
    key: 'hull-number-discrepancy',
    system: 'hull',
    title: 'Hull number missing, altered or not agreeing with the papers',
    lookFor:
      'Read the number where it is moulded, cut or riveted at the stern, and look for the hidden second one. Compare every character with registration, bill of sale and builder’s plate. Feel for a refaired patch, a plate fixed by odd rivets, or strokes added to change a character. Photograph it square on with a scale.',
    observed:
      'The hull identification number {location} reads {reading}. It is incomplete or does not agree with the papers shown.',
    consequence:
      'Title, age and model rest on this number. A doubtful one may point to theft, to a rebuilt hull or merely to a clerk’s error, and may stop registration, insurance or sale.',
    recommendation:
      'The owner should clear the difference with the registering authority and builder before money changes hands. An altered or removed number should be reported as local law requires; do not restamp it.',
    urgency: 'note',
    raise: 'Within a stated time where a sale, registration or claim waits for it.',
    harms: ['unlawful'],
    references: ['33 CFR 181.25', '33 CFR 181.29', 'ISO 10087'],
    worksheets: ['hull-number'],
    cautions: [],
    related: ['hull-builders-plate-missing'],
    alsoCalled: ['HIN', 'CIN', 'craft identification number', 'serial number'],
  },
  {
    key: 'hull-builders-plate-missing',
    system: 'hull',
    title: 'Plate for loading and power missing or illegible',
    lookFor:
      'Look near the helm or at the transom inside for the plate or label stating persons, load and, for outboards, greatest power. Read it against the engine fitted and the seats provided. A plate painted over counts as missing.',
    observed:
      'No legible plate for loading and power was found {location}. The engine fitted is marked {reading}.',
    consequence:
      'Without it the people aboard cannot know how many she carries safely; an overloaded or overpowered small boat swamps or becomes unmanageable.',
    recommendation:
      'Obtain a replacement plate or written figures from the builder or the authority that certified her. Until then load her cautiously and fit no larger engine.',
    urgency: 'next-layup',
    raise: 'Within a stated time where the engine is larger than the figures for her kind of hull allow.',
    lower: 'A note for boats outside the rules that call for a plate.',
    harms: ['loss-of-control', 'flooding', 'unlawful'],
    references: ['ISO 14945', 'ISO 14946', '33 CFR 183.53'],
    worksheets: ['safe-loading', 'safe-power'],
    cautions: [],
    related: ['hull-number-discrepancy'],
    alsoCalled: ['capacity plate', 'capacity label', 'builder’s plate'],
  },
);
