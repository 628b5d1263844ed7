import { entries } from '../entry.ts';
import { aloft, belowTheMast, rigUnderLoad } from './cautions.ts';

/** Mast, boom and spreaders. */
export const sparEntries = entries(
  {
    key: 'rig-mast-heel-corroded',
    system: 'rig-sails',
    title: 'Mast heel corroded',
    lookFor:
      'Look at the lowest hand’s breadth of the mast all round for white powder, pits, bulges and cracks at drain holes, and into the heel where wires come out. A mast stepped on the keel stands in bilge water and suffers most. See whether the heel touches steel, bronze or copper-soaked wood, and whether its drain is open. Powder alone brushes off and leaves a sound wall that rings.',
    observed: 'The heel of the mast was corroded {location}, {extent}. The deepest pit measured {reading}.',
    consequence:
      'The heel carries the pull of all the rigging together. When its wall has thinned it crumples, the rig goes slack and the mast may come off its step.',
    recommendation:
      'Have the mast unstepped and the heel examined by a rigger. Cut off or sleeve what is wasted, open the drain, and isolate the heel from its step.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the wall is eaten through or has buckled.',
    lower: 'At the next lay-up when it is surface powder only and the wall rings sound.',
    harms: ['rig-failure', 'deterioration'],
    references: [],
    worksheets: ['galvanic-couple'],
    cautions: [rigUnderLoad],
    related: ['deck-mast-support-sinking', 'rig-mast-fitting-corrosion', 'rig-mast-cracked'],
    alsoCalled: ['mast step', 'mast foot', 'mast butt', 'keel-stepped mast'],
  },
  {
    key: 'rig-mast-fitting-corrosion',
    system: 'rig-sails',
    title: 'Aluminium mast eaten under its stainless fittings',
    lookFor:
      'Look round stainless fittings, winch bases and rivets for blisters in the paint or anodising, white powder, and gaps under the edges. Press beside them with a blunt point. A ring of powder without pits is a beginning. A fitting that has lifted, or rivets that turn, are past that.',
    observed:
      'The mast was corroded under {item}, {location}, {extent}. Nothing was seen that parts the metals.',
    consequence:
      'Stainless steel and aluminium make a cell in salt water. The wall thins unseen until the fitting pulls out.',
    recommendation:
      'Have a rigger take off the worst fittings, judge the wall, and refit them with barrier tape or paste and rivets of a metal that suits both. Sleeve or plate where the wall is thin.',
    urgency: 'next-layup',
    raise: 'Before use when a loaded fitting, a tang or gooseneck has moved or the wall is holed near it.',
    lower: 'A note when it is bloom on the surface.',
    harms: ['rig-failure', 'deterioration'],
    references: [],
    worksheets: ['galvanic-couple'],
    cautions: [aloft, belowTheMast],
    related: ['rig-mast-heel-corroded', 'rig-mast-cracked'],
    alsoCalled: ['galvanic corrosion', 'nickel-copper rivets', 'winch pads'],
  },
  {
    key: 'rig-mast-cracked',
    system: 'rig-sails',
    title: 'Mast or boom cracked, dented or bent',
    lookFor:
      'Look along the track for a bend that stays with the rig slack, and round every cut-out: spreaders, sheave boxes, tangs, gooseneck, vang and the partners. Cracks run from square corners and from rivet holes in a row. Dents in the wall of a mast in compression matter more than scratches.',
    observed: 'A crack or dent was found in {item}, {location}, {size} long.',
    consequence:
      'A spar in compression folds at its weakest place. A crack at a cut-out or a dent is that place.',
    recommendation:
      'Have a rigger or spar maker examine it unstepped, find the cause, and sleeve or renew the length. Do not sail on a cracked mast.',
    urgency: 'before-use',
    lower: 'At the next lay-up for a shallow dent in a boom or a slight lasting bend without cracks.',
    harms: ['rig-failure', 'injury'],
    references: [],
    worksheets: [],
    cautions: [aloft, belowTheMast, rigUnderLoad],
    related: ['rig-spreader-root', 'rig-mast-fitting-corrosion'],
    alsoCalled: ['gooseneck', 'boom', 'spar', 'crack at cut-out'],
  },
  {
    key: 'rig-spreader-root',
    system: 'rig-sails',
    title: 'Spreader root cracked, or the spreader drooping or loose',
    lookFor:
      'From ahead with a glass: spreaders should halve the angle the shroud makes, so slant slightly upward, and match each other. Aloft, look at the root and its weld, pins and through bar, and for movement fore-and-aft on fixed types. Take off the boots: tips should be fixed to the shroud, with the wire sound below. Wooden spreaders rot at the top of the root and under paint.',
    observed:
      'The {side} spreader was cracked or loose at its root, {extent}, and did not stand at the angle of the other.',
    consequence:
      'A spreader that slips or swings lets its shroud go slack, and the mast buckles sideways at that height.',
    recommendation:
      'Have a rigger repair or renew the root, set the angle and fix the tips so that they can neither slide nor cut the wire.',
    urgency: 'before-use',
    lower: 'Within 30 days when there is no crack and only the angle is wrong by a little.',
    harms: ['rig-failure'],
    references: [],
    worksheets: [],
    cautions: [aloft, belowTheMast, rigUnderLoad],
    related: ['rig-mast-cracked', 'rig-broken-strands'],
    alsoCalled: ['spreader angle', 'spreader boots', 'crosstrees', 'drooping spreaders'],
  },
  {
    key: 'rig-wood-spar-rot',
    system: 'rig-sails',
    title: 'Wooden spar with rot or open glue lines',
    lookFor:
      'Look for dark stain under varnish at the heel, under mast bands, at the partners, at fastening holes and where halyard sheaves let in rain. Probe gently and sound with a small mallet; try a knife blade in the glue lines. Shakes along the grain that do not run out are usual in solid spars; open scarfs are not.',
    observed: 'The wood of {item} was dark and soft {location}, {extent}. Glue lines stood open.',
    consequence:
      'Rot and open glue take away the walls that carry the compression, and hide under paint and bands.',
    recommendation:
      'Have a spar maker scarf in new wood or re-glue it, with the fittings off, and seal end grain and holes. Unstep and strip it for a full look every few years.',
    urgency: 'next-layup',
    raise: 'Before use when it is soft at the heel, partners or tangs, or a scarf has opened.',
    lower: 'A note for dry shakes that do not run out of the spar.',
    harms: ['rig-failure', 'deterioration'],
    references: [],
    worksheets: ['sounding-map'],
    cautions: [aloft, belowTheMast],
    related: ['rig-mast-heel-corroded', 'rig-spreader-root'],
    alsoCalled: ['timber mast', 'box spar', 'spruce', 'dry rot', 'delaminated spar'],
  },
);
