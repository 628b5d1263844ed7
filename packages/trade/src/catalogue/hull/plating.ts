import { closedSpaces, underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const hullPlatingEntries = entries(
  {
    key: 'hull-plating-thinned',
    system: 'hull',
    title: 'Steel plating thinned by corrosion',
    lookFor:
      'Clean small patches to bright metal and gauge the thickness in a pattern over the whole hull, closer together along the waterline, at the turn of the bilge, under tanks and stagnant bilges, and about the stern gear. Corrosion mostly works from inside, so look there too. Compare with the original thickness from plans or builder, not with the thickest reading found. Prove the gauge on a test piece; a coating or a double echo reads false.',
    observed:
      'Plating {location} measured {reading} at its thinnest, {extent}. The original thickness is given as {size}.',
    consequence:
      'Thin plating dents, cracks along the frames and at last holes, often first under a tank or wet insulation where nobody looks. Many insurers set a least thickness of their own.',
    recommendation:
      'Have the area gauged closely and its edges marked. Renew wasted plating by inserts butt-welded to sound plate with rounded corners, by coded welders, after clearing the inside of anything that burns. Recoat inside and out and check the anodes.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before next use where the plate yields to a hammer or is holed or nearly so.',
    lower: 'Next lay-up where loss is even and well within the allowance agreed for this hull.',
    harms: ['flooding', 'structural-failure'],
    references: ['NVIC 7-68', 'ISO 12215-5'],
    worksheets: ['plate-thickness', 'hull-potential', 'anode-life'],
    cautions: [
      underBoat,
      closedSpaces,
      'Do not hammer-test thin plating while she is afloat: the hammer may go through.',
    ],
    related: ['hull-plating-pitted', 'hull-plating-doubled', 'corrosion-anode-wasted'],
    alsoCalled: ['ultrasonic thickness', 'wastage', 'diminution', 'thin plate', 'gauging'],
  },
  {
    key: 'hull-plating-pitted',
    system: 'hull',
    title: 'Pitting of steel plating',
    lookFor:
      'Look right after washing, before rust hides the edges. Bright, clean-walled craters point to stray current or missing anodes; pits under a hard scab or within damaged coating are common corrosion or the work of bacteria. Measure the depth with a pit gauge and the plate beside it with the thickness gauge: an ultrasonic probe cannot sit in a pit. Count the pits on a set square of plate.',
    observed:
      'Pits up to {size} deep were found {location}, {extent}. The plate beside them measured {reading}.',
    consequence:
      'What counts is the metal left under the deepest pit, not the mean. A pit goes on while its cause remains and ends as a small hole.',
    recommendation:
      'Find and stop the cause first: coating, anodes, bonding, shore supply. Blast and coat where the rest is thick enough; have single deep pits weld-filled by a coded welder, and insert new plate where they lie close together.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before next use where little metal is left or the pits are bright and fresh.',
    lower: 'Next lay-up for shallow old pits that are firmly coated.',
    harms: ['flooding', 'deterioration'],
    references: ['NVIC 7-68'],
    worksheets: ['plate-thickness', 'hull-potential', 'anode-life'],
    cautions: [underBoat, closedSpaces],
    related: [
      'hull-plating-thinned',
      'corrosion-stray-current',
      'corrosion-anode-wasted',
      'ac-galvanic-isolator',
    ],
    alsoCalled: ['pit corrosion', 'microbial corrosion', 'SRB', 'electrolysis'],
  },
  {
    key: 'hull-plating-doubled',
    system: 'hull',
    title: 'Doubling plates welded over thin plating',
    lookFor:
      'Look for raised edges, weld lines that meet no frame and a step at the waterline or chine. A thickness probe reads the doubler only and says nothing of the old plate behind. Look inside for the age of the plate and scorched paint, and ask for records. Tap for gaps between the plates.',
    observed:
      'Doubling plates were found {location}, {extent}. The condition of the plate behind them could not be measured.',
    consequence:
      'The plates are joined only along their edges, so the doubler hides the wasted plate instead of replacing it, and water between the two rusts both. It adds weight low down that may put skin fittings nearer the water.',
    recommendation:
      'Treat doublers over wasted plate as temporary. Have the old plate gauged from inside, and plan renewal by inserts. Doublers meant as wear pads or local stiffening may stay if their welds are continuous and sound.',
    urgency: 'next-layup',
    raise: 'Within days where welds are broken, rust bleeds from the edges or the plate behind is holed.',
    lower: 'A note for original wear or landing pads.',
    harms: ['structural-failure', 'flooding'],
    references: ['NVIC 7-68'],
    worksheets: ['plate-thickness'],
    cautions: [underBoat, closedSpaces],
    related: ['hull-plating-thinned', 'hull-plating-pitted'],
    alsoCalled: ['overplating', 'doublers', 'lap patch'],
  },
  {
    key: 'hull-aluminium-poultice',
    system: 'hull',
    title: 'Aluminium corroded under wet material or unlike metals',
    lookFor:
      'Lift what lies against the plate: wet insulation, carpet, timber bearers, sealant edges, tank straps. White paste and blistered paint mark the attack; scrape and measure the depth. Look round stainless bolts, bronze fittings and copper wire or coins in the bilge, each of which eats the plate beside it. Copper-bearing antifouling on bare aluminium is a further cause.',
    observed:
      'White corrosion product was found {location}, {extent}, beneath {item}. Pits measured up to {size} after scraping.',
    consequence:
      'Aluminium needs air to keep its protecting oxide. Starved of it under wet material, or joined to a nobler metal in salt water, it pits through in a short time.',
    recommendation:
      'Remove what holds the water, clean and measure the plate, and have deep places repaired by a welder qualified for the alloy. Insulate unlike metals, use only coatings made for aluminium, and check hull potential with and without shore supply.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before next use where the plate is nearly through below the waterline.',
    lower: 'Next lay-up for surface staining above the waterline.',
    harms: ['flooding', 'structural-failure', 'deterioration'],
    references: ['ABYC E-2', 'ISO 12215-5'],
    worksheets: ['hull-potential', 'plate-thickness', 'anode-life'],
    cautions: [underBoat, closedSpaces],
    related: [
      'hull-plating-pitted',
      'corrosion-mixed-metals',
      'corrosion-stray-current',
      'corrosion-overprotected',
    ],
    alsoCalled: ['aluminum', 'poultice corrosion', 'crevice corrosion', 'galvanic corrosion'],
  },
);
