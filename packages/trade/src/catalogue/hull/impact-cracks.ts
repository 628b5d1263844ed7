import { closedSpaces, underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const hullImpactCracksEntries = entries(
  {
    key: 'hull-impact-damage',
    system: 'hull',
    title: 'Impact damage with the laminate hurt behind the mark',
    lookFor:
      'Rings of fine cracks round a point, or a scrape ending in a bruise, mark a blow. Sound outwards from the mark until the note rings clear again and chalk the edge: delamination reaches further than the visible crack. Find the place inside and look for white, starred or torn laminate and for a frame or bulkhead broken loose. Glass laminate often springs back, so a fair outside proves nothing.',
    observed:
      'Impact damage was found {location}, {extent}. The gelcoat is cracked in rings, the area sounds dull and the laminate inside is whitened.',
    consequence:
      'Layers torn apart no longer share the load. The panel bends more at each wave and the damage spreads; below the waterline it may let go.',
    recommendation:
      'Have linings removed to show the inner face, then cut out the damaged laminate and rebuild it with a tapered scarf, by a yard experienced in structural repair. Refix any framing broken loose. Keep photographs from before closing up.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before next use where it lies below the waterline or at the bow, gives under the hand, or has framing loose behind it.',
    lower: 'Next lay-up for a bruise high in the topsides that is dry, stiff and whole inside.',
    harms: ['structural-failure', 'flooding'],
    references: ['ISO 12215-5', 'ISO 12215-6'],
    worksheets: ['sounding-map', 'moisture-map'],
    cautions: [underBoat],
    related: ['hull-framing-detached', 'hull-repair-poor', 'keel-floors-cracked'],
    alsoCalled: ['collision damage', 'grounding damage', 'star crack', 'delamination'],
  },
  {
    key: 'hull-gelcoat-cracks',
    system: 'hull',
    title: 'Cracks in the gelcoat: pattern shows whether stress or ageing',
    lookFor:
      'Note direction and place before judging. Parallel lines along a bulkhead or frame show bending over a hard spot; lines fanning from a fitting show overload; cracks at an inside corner show too tight a radius. A random fine network like old china is ageing or thick gelcoat. Ream one crack with a sharp point: if it stops at the laminate it is in the gelcoat, if fibres are white or broken it is not.',
    observed: 'Cracks in the gelcoat run {location}, {extent}. One was opened and found to end {size} deep.',
    consequence:
      'Cracks in gelcoat alone let water reach the laminate and look poor. Cracks that repeat the line of a frame or fan from a fitting tell of movement which will continue until the structure is stiffened.',
    recommendation:
      'Where the pattern shows movement, find and cure the cause first: stiffen, back or refasten. Then grind out the cracks, inspect the laminate and make good. Ageing cracks may be filled when convenience serves.',
    urgency: 'next-layup',
    raise:
      'Within days where fibres are broken, the panel moves by hand, or the pattern follows a bulkhead, keel or chain plate.',
    lower: 'A note for a random surface network.',
    harms: ['deterioration', 'structural-failure'],
    references: ['ISO 12215-5'],
    worksheets: ['sounding-map'],
    cautions: [underBoat],
    related: ['hull-framing-detached', 'deck-fitting-no-backing', 'keel-floors-cracked'],
    alsoCalled: ['crazing', 'spider cracks', 'stress cracks', 'hairline cracks'],
  },
  {
    key: 'hull-framing-detached',
    system: 'hull',
    title: 'Bulkhead or stringer bonding broken away from the hull',
    lookFor:
      'Run a torch along the laminate angles that bond bulkheads, stringers and floors to the hull, also behind lockers and under berths. Look for a dark line at the edge, white laminate, dust, paint that has cracked and doors that no longer shut. Push a feeler or thin blade under the edge and tap along it. Have someone lift on the forestay or jack the hull gently with the yard’s help, and watch for movement.',
    observed:
      'The bonding of {item} was found detached from the hull {location}, {extent}. A blade of {size} enters under the edge.',
    consequence:
      'The framing that keeps the hull in shape no longer holds it. Panels work, rig and keel loads find other ways, and the rest of the bonding is torn in turn.',
    recommendation:
      'Have a structural laminator grind back to clean laminate on both parts, refit the frame or bulkhead, and renew the bonding with enough layers and width. Look for the cause: grounding, rig overload, wet plywood.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use at chain plates, mast support, keel floors or engine beds.',
    lower: 'Next lay-up for a short length at a partition that carries no load.',
    harms: ['structural-failure', 'rig-failure', 'flooding'],
    references: ['ISO 12215-6'],
    worksheets: ['sounding-map'],
    cautions: [closedSpaces],
    related: [
      'hull-stringers-decayed',
      'keel-floors-cracked',
      'hull-impact-damage',
      'rig-chainplate-structure-moved',
    ],
    alsoCalled: ['tabbing', 'secondary bonding', 'glassing-in', 'matting-in'],
  },
  {
    key: 'hull-stringers-decayed',
    system: 'hull',
    title: 'Wet or rotten timber inside encapsulated stringers or engine beds',
    lookFor:
      'Tap along stringers and engine beds: decayed timber answers dead beneath a skin that may look perfect. Look for brown drips at limber holes, screw holes and cut ends, crushed laminate beneath engine feet and mountings that no longer hold torque. Withdraw a screw if the owner agrees and smell and test what comes out. A meter helps only against the same structure elsewhere.',
    observed: 'Stringers {location} sound dead {extent}. Brown water and soft fibres came from {item}.',
    consequence:
      'The timber gave the stiffener its height and held the fastenings. Once soft, the skin crushes under bolts, engine alignment wanders and the bottom panel loses its support.',
    recommendation:
      'Have the extent found by drilling from above in a pattern, holes to be sealed after. Renew the core of affected lengths and laminate over them, with every limber hole and fastening sealed, by a competent yard. Check engine alignment afterwards.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where an engine mounting is loose or the bottom moves under hand pressure.',
    lower: 'Next lay-up where one short end is wet but still firm.',
    harms: ['structural-failure', 'loss-of-control', 'deterioration'],
    references: ['ISO 12215-6'],
    worksheets: ['sounding-map', 'moisture-map'],
    cautions: [closedSpaces, 'Engine stopped and its key out before reaching round the beds.'],
    related: ['hull-framing-detached', 'cored-transom-wet', 'engine-mounts-perished'],
    alsoCalled: ['rotten bearers', 'engine bed rot', 'stringer rot'],
  },
  {
    key: 'hull-ferrocement-rust',
    system: 'hull',
    title: 'Rust stains and spalling on a ferrocement hull',
    lookFor:
      'Look for rust runs, bulging plaster and hairline cracks that follow the lines of rods or mesh. Tap with a light hammer: sound plaster rings, loosened plaster clacks. Break away only what is already loose and see how bright the steel is beneath.',
    observed:
      'Rust staining and loose plaster were found {location}, {extent}. The reinforcement laid bare has lost section.',
    consequence:
      'Steel that rusts swells and bursts the plaster off, which lets in more salt water. Strength lost from the mesh cannot be seen from outside.',
    recommendation:
      'Cut back to bright steel and sound plaster, treat or lap in new reinforcement, and close with a mortar made for marine repair. Where more than a few places are affected, have the hull assessed by someone who knows this material before money is spent.',
    urgency: 'next-layup',
    raise: 'Within days or before use where plaster is loose below the waterline or water weeps in.',
    harms: ['structural-failure', 'flooding', 'deterioration'],
    references: [],
    worksheets: ['sounding-map'],
    cautions: [underBoat, 'Chips of plaster and rust fly: protect the eyes.'],
    related: ['hull-impact-damage'],
    alsoCalled: ['ferro', 'concrete hull'],
  },
);
