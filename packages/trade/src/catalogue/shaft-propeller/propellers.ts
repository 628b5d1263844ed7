import { underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';
import { machineryStopped } from './cautions.ts';

const sharpBlades = 'Blades are sharp and a propeller can swing when touched: wear gloves and chock it.';

/** The propeller and what holds it on its shaft. */
export const propellerEntries = entries(
  {
    key: 'propeller-nuts-wrong-order',
    system: 'shaft-propeller',
    title: 'Propeller nuts in the wrong order: full nut next to the hub',
    lookFor:
      'Where two plain nuts hold the propeller, see which lies against the hub. The thin lock nut belongs next to the hub and the full nut outside it, with the split pin beyond. Nuts of equal height, a single nut with a locking washer and makers’ own systems are other arrangements and are not this fault.',
    observed:
      'The nuts of the {side} propeller were fitted with the full nut next to the hub and the thin lock nut outside.',
    consequence:
      'When the outer nut is tightened it takes over the load of the thread, so the nut with the most thread should be outside. Many boats run for years with them the other way round; the locking is less sure, and that is all.',
    recommendation:
      'At the next haul-out take both nuts off, seat the propeller on its taper, fit the thin nut against the hub and the full nut outside, tighten one against the other and fit a new split pin.',
    urgency: 'note',
    raise: 'Treat separately and before use when either nut is loose or the split pin is missing.',
    harms: ['deterioration'],
    references: ['SAE J755', 'SAE J756', 'ABYC P-6'],
    worksheets: [],
    cautions: [underBoat, machineryStopped],
    related: ['propeller-nut-unlocked', 'propeller-not-seated'],
    diagram: 'propeller-nut-order',
    alsoCalled: ['jam nut', 'half nut', 'prop nut', 'lock nut', 'propeller nut order'],
  },
  {
    key: 'propeller-nut-unlocked',
    system: 'shaft-propeller',
    title: 'Propeller nut loose or its split pin missing',
    lookFor:
      'Try the nuts by hand and by spanner, and find what locks them: split pin, tab washer or locking screw. A split pin should be of a metal that lasts in sea water, fill its hole and be spread. Rust-coloured, thinned or broken pins count as missing. Look under any cone anode: it often hides the nut and its screw may be gone.',
    observed: 'The nut of the {side} propeller was not locked: {item} was missing or wasted.',
    consequence:
      'Going astern tends to unscrew and draw off the propeller. Without locking the nut can back off and the propeller be lost, often when it is needed to stop.',
    recommendation:
      'Before launching, draw up the nuts with the propeller properly seated and fit a new pin or lock of compatible metal. Examine key, taper and thread if the nut was found loose.',
    urgency: 'before-use',
    lower: 'At the next haul-out when the lock is in place and effective but worn.',
    harms: ['loss-of-control'],
    references: ['ABYC P-6', 'SAE J755'],
    worksheets: [],
    cautions: [underBoat, machineryStopped, sharpBlades],
    related: ['propeller-nuts-wrong-order', 'propeller-not-seated'],
    diagram: 'propeller-nut-order',
    alsoCalled: ['cotter pin', 'split pin', 'prop nut loose'],
  },
  {
    key: 'propeller-not-seated',
    system: 'shaft-propeller',
    title: 'Propeller not seated on its taper, or riding on its key',
    lookFor:
      'Rock the propeller against the shaft: any movement between them is a fault. Look for rust or dark weeping at the ends of the hub and for a bright ring on the taper. With the propeller off, slide it up without the key and mark where it stops, then with the key; it must reach the same mark. Blue the taper to see the contact.',
    observed:
      'The {side} propeller moved on its shaft when rocked by hand. It touched its taper only {extent}.',
    consequence:
      'The taper carries the torque, the key only helps. A propeller held off by its key frets, cracks the keyway and in the end shears the key or the shaft.',
    recommendation:
      'Have a propeller shop lap the hub to the taper, renew the key to fit the keyway with clearance on top, and examine the end of the shaft for cracks at the keyway.',
    urgency: 'next-layup',
    raise: 'Before use when the propeller moves on the shaft or a crack is found.',
    harms: ['loss-of-control', 'deterioration'],
    references: ['SAE J755', 'ABYC P-6'],
    worksheets: ['shaft-size'],
    cautions: [
      underBoat,
      'Stand clear of the line of the shaft when drawing a propeller: it can jump off its taper. Leave the nut on by a few threads.',
      machineryStopped,
    ],
    related: ['propeller-nut-unlocked', 'shaft-crevice-corrosion'],
    alsoCalled: ['keyway', 'key proud', 'prop taper', 'lapping'],
  },
  {
    key: 'propeller-dezincified',
    system: 'shaft-propeller',
    title: 'Propeller pink and weak from loss of zinc',
    lookFor:
      'Scrape a blade near its tip and at an edge. Sound manganese bronze is yellow; pink or coppery metal has lost its zinc. Tap the blades: sound ones ring, wasted ones are dull. Thin pink film alone can be plated copper; scrape deeper before condemning it. Look at the anodes, their fastening and the contact of the shaft with them.',
    observed:
      'The {side} propeller showed pink metal under its surface {extent} and sounded dull when tapped.',
    consequence:
      'Metal that has lost its zinc is porous and brittle: blades break at a light touch. It also shows that the propeller was not protected, so shaft and bracket want the same look.',
    recommendation:
      'Have the propeller judged by a propeller shop; renew it when the loss is more than a skin. Renew the anodes, prove their electrical contact with the shaft, and look for the cause.',
    urgency: 'next-layup',
    raise: 'Before use when blades crumble, are cracked or pieces are gone.',
    lower: 'A note when scraping shows yellow metal just below the film.',
    harms: ['loss-of-control', 'deterioration'],
    references: ['ABYC E-2'],
    worksheets: ['hull-potential', 'anode-life', 'galvanic-couple'],
    cautions: [underBoat, machineryStopped, sharpBlades],
    related: ['propeller-blades-damaged', 'shaft-bracket-loose'],
    alsoCalled: ['dezincification', 'pink prop', 'manganese bronze'],
  },
  {
    key: 'propeller-blades-damaged',
    system: 'shaft-propeller',
    title: 'Propeller blades bent, nicked or eaten away',
    lookFor:
      'Turn the propeller against a fixed pointer and compare the tips, then the edges, of all blades. Feel for nicks, rolled edges and cracks at the blade roots. Pitting on the back of the blades near the tips is cavitation; pitting everywhere with pink colour is corrosion. Note the numbers stamped on the hub: twin propellers should match and turn opposite ways.',
    observed:
      'On the {side} propeller {count} blades were bent or nicked, {extent}. The hub was stamped {size}.',
    consequence:
      'An unequal propeller shakes shaft, bracket and gland at every turn, costs speed and fuel, and can crack from a nick.',
    recommendation:
      'Send the propeller to a propeller shop for repair, measuring of pitch and balancing; renew it if cracks run into the root. Look for a bent shaft from the same blow.',
    urgency: 'next-layup',
    raise: 'Before use when a blade is cracked, a piece is missing or vibration is strong.',
    lower: 'A note when small nicks can be dressed with a file and there is no vibration.',
    harms: ['deterioration', 'loss-of-control'],
    references: [],
    worksheets: ['propeller-slip', 'speed-runs'],
    cautions: [underBoat, machineryStopped, sharpBlades],
    related: ['shaft-bent', 'propeller-dezincified', 'shaft-bracket-loose'],
    alsoCalled: ['dinged prop', 'cavitation damage', 'propeller out of balance'],
  },
  {
    key: 'propeller-wrong-load',
    system: 'shaft-propeller',
    title: 'Propeller too large or too small for its engine',
    lookFor:
      'On trial with clean bottom, usual load and deep water, open the throttle fully for a short time and read the engine speed with a tachometer that has been checked. Compare with the speed on the engine’s plate. Before blaming the propeller, make sure the throttle opens fully, the hull and propeller are clean and air and fuel are free.',
    observed:
      'At full throttle the {side} engine turned {reading}, which is not its rated speed. The propeller was stamped {size}.',
    consequence:
      'An engine held below its rated speed at full throttle is overloaded: it runs hot, smokes and wears early. One that runs past it is underloaded and can overspeed.',
    recommendation:
      'Have a propeller maker recalculate diameter and pitch from the trial figures and alter or exchange the propeller. Until then, keep to the cruising speed that the engine’s maker allows with this load.',
    urgency: 'next-layup',
    raise: 'Within 30 days when the exhaust smokes black or temperatures rise at cruising speed.',
    lower: 'A note when bottom and propeller were foul: repeat the trial when clean.',
    harms: ['deterioration'],
    references: [],
    worksheets: ['propeller-slip', 'engine-readings', 'speed-runs'],
    cautions: [
      'Full throttle only in open water, with a look-out and the crew holding on; stop at once if temperature or pressure leaves its range.',
    ],
    related: ['propeller-blades-damaged'],
    alsoCalled: ['over-propped', 'under-propped', 'over-pitched', 'WOT'],
  },
  {
    key: 'propeller-folding-worn',
    system: 'shaft-propeller',
    title: 'Folding or feathering propeller worn in its pins or gears',
    lookFor:
      'Open and close the blades by hand: they should move freely and together. Rock each blade at its tip; compare with the play that the maker allows. Look for pins, screws and circlips that are loose, locking screws missing, gear teeth stepped, and the anode on the hub. Some play at the tip is normal on most; unequal play between blades is not.',
    observed:
      'The blades of the {side} propeller had {reading} of play at the tip. On its pins {count} retaining screws were loose or missing.',
    consequence:
      'Worn blades open unevenly, shake the boat and may not open astern. A lost pin screw loses the blade.',
    recommendation:
      'Have the propeller dismantled and rebuilt with the maker’s pins, bushes and locking, greased where meant, and fitted with a new anode.',
    urgency: 'next-layup',
    raise: 'Before use when a pin or its lock is loose or missing.',
    harms: ['loss-of-control', 'deterioration'],
    references: [],
    worksheets: ['anode-life'],
    cautions: [underBoat, machineryStopped, 'Keep fingers out of the gears while blades fold.'],
    related: ['propeller-nut-unlocked', 'propeller-dezincified'],
    alsoCalled: ['folding prop', 'feathering prop', 'blade play'],
  },
  {
    key: 'shaft-crevice-corrosion',
    system: 'shaft-propeller',
    title: 'Stainless shaft pitted where the water stands still',
    lookFor:
      'Look at the parts where water lies without air: under packing, inside the stern tube, under bearings, anode collars and barnacles, and at the keyway beneath the propeller hub. Pits are often pin holes at the surface with caves below; probe with a scriber. Rust streaks from a stainless shaft, or fine lines around it, want dye penetrant.',
    observed: 'The {material} shaft showed pits {location}, {extent}, the deepest about {reading}.',
    consequence:
      'Stainless steel needs oxygen to keep its skin. In still water it corrodes in pits and crevices, and a shaft that turns breaks from such a pit.',
    recommendation:
      'Draw the shaft and have it examined with dye penetrant by a machine shop. Renew a pitted shaft, in a grade made for shafts. Where she lies idle for long, turn the shaft now and then and see that water flows through the stern tube.',
    urgency: 'next-layup',
    raise: 'Before use when a crack is found or pits are deep at the keyway or gland.',
    lower: 'A note when it is a surface stain that polishes off.',
    harms: ['loss-of-control', 'flooding'],
    references: ['ABYC P-6'],
    worksheets: ['shaft-size', 'shaft-wear', 'hull-potential'],
    cautions: [underBoat, machineryStopped],
    related: ['shaft-worn-in-bearing', 'stern-gland-leaking', 'propeller-not-seated'],
    alsoCalled: ['pitting', 'oxygen starvation', 'crevice corrosion', 'poultice'],
  },
);
