import { entries } from '../entry.ts';

export const coredDeckEntries = entries(
  {
    key: 'cored-deck-wet-fittings',
    system: 'cored-structure',
    title: 'Wet core under deck fittings, weeping brown',
    lookFor:
      'Look below for brown or tea-coloured drips and stains at bolts and cut-outs: the colour comes from rotting balsa or plywood. Take meter readings round each stanchion, chain plate, cleat, window and hatch, working outward until they fall to the level of dry deck nearby, then sound the same area and walk it for softness. Readings are relative; salt, metal, wiring and a wet surface raise them. Confirm with a bolt drawn or a small core sample, with leave.',
    observed:
      'Brown weeping was found at {item} {location}. Meter readings are raised and the deck sounds dull {extent}; the reading was {reading}.',
    consequence:
      'Water that passes the bedding spreads through the core, which softens and parts from the skins. The deck loses stiffness and the fittings lose their hold; frost widens it.',
    recommendation:
      'Map the wet area first. Remove the fittings, open one skin where the core is soft, renew the core in dry material and close the skin with a tapered edge. Round every bolt take the core out and fill solid with thickened epoxy before drilling again, and re-bed on a backing plate.',
    urgency: 'next-layup',
    raise: 'Within days at chain plates, mast step and stanchions, or where the deck gives underfoot.',
    lower: 'Watch and re-bed where only the edge of one bolt hole is damp and all else rings sound.',
    harms: ['deterioration', 'structural-failure', 'injury'],
    references: ['ISO 12215-5'],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: ['Step with care on a deck that gives; keep off soft hatches and coach roofs.'],
    related: [
      'cored-bolts-crushing',
      'cored-edge-unsealed',
      'cored-skin-debonded',
      'deck-fitting-no-backing',
      'deck-mast-support-sinking',
      'rig-chainplate-structure-moved',
    ],
    diagram: 'deck-fitting-core',
    alsoCalled: ['balsa rot', 'soft deck', 'spongy deck', 'moisture meter', 'saturated core'],
  },
  {
    key: 'cored-bolts-crushing',
    system: 'cored-structure',
    title: 'Bolts clamping bare core: deck crushed under fittings',
    lookFor:
      'Sight across each fitting: the base stands in a dish, or washers below are drawn in. Nuts that take turn after turn without getting tight are squeezing the core. Draw one bolt with leave and look in the hole: solid filling is pale and hard, bare core is fibrous or honeycombed.',
    observed:
      'The deck under {item} {location} is dished by {size}. In the hole of a bolt drawn bare core was seen.',
    consequence:
      'Core yields under the clamping of bolts, so the bedding loses its pressure and leaks. Wet core then softens and the fitting works more.',
    recommendation:
      'Remove the fitting, take the core back round each hole beyond the washer, fill with thickened epoxy or a solid insert, and refit with a backing plate and fresh bedding.',
    urgency: 'next-layup',
    raise: 'Within days for a fitting that moves under load.',
    harms: ['deterioration', 'injury'],
    references: ['ISO 12215-5'],
    worksheets: ['moisture-map'],
    cautions: [],
    related: ['cored-deck-wet-fittings', 'deck-fitting-no-backing'],
    diagram: 'deck-fitting-core',
    alsoCalled: ['crushed core', 'compression', 'epoxy plug', 'potting'],
  },
  {
    key: 'cored-edge-unsealed',
    system: 'cored-structure',
    title: 'Raw core showing at a cut-out',
    lookFor:
      'Take off a trim ring or instrument, open a hatch frame or look up behind the panel where a speaker, vent or window was let in. Raw balsa, foam or plywood can be seen and touched. Try its edge with a spike and take meter readings from there outward.',
    observed: 'Raw core is exposed at {item} {location}. Its edge is damp and discoloured {extent}.',
    consequence:
      'The cut edge is an open mouth to water. Balsa takes it in along the grain and plywood along the plies; foam holds it in cells and gaps.',
    recommendation:
      'Dry the edge, rake the core back behind the skins, fill flush with thickened epoxy and bed the fitting again. Check every other cut-out made by the same hand.',
    urgency: 'next-layup',
    raise: 'Within days where it lies in the hull or is already soft beyond the edge.',
    harms: ['deterioration', 'structural-failure'],
    references: [],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: [],
    related: ['cored-deck-wet-fittings', 'cored-hull-wet', 'deck-window-leaking'],
    alsoCalled: ['unsealed core', 'exposed balsa', 'cut-out'],
  },
);
