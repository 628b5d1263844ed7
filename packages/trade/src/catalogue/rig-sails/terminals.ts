import { entries } from '../entry.ts';
import { aloft, rigUnderLoad } from './cautions.ts';

/** The ends of the standing rigging and the wire beside them. */
export const terminalEntries = entries(
  {
    key: 'rig-swage-lengthwise-crack',
    system: 'rig-sails',
    title: 'Swaged terminal with a lengthwise crack',
    lookFor:
      'Clean each swage with a plastic pad, look along the barrel with a lens and strong light from the side, then use dye penetrant. A crack along the barrel, often with a brown line, starts from rust swelling inside. Lower ends are worst, as rain and salt run down into them. Die lines from swaging run along too, but are shallow, straight, even and take no dye.',
    observed:
      'A swaged terminal of {item}, {location}, had a lengthwise crack {size} long, with rust weeping from it.',
    consequence:
      'Corrosion inside the barrel is bursting it. It grips the wire less than it should, and the wire inside cannot be seen. Terminals of the same age and make are likely to follow.',
    recommendation:
      'Have a rigger replace this wire with its terminals, and examine every other terminal of the same age with dye penetrant. Where several show cracks or the rig has reached its usual life, renew it as a set.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before use when the crack can be opened with a nail, reaches an end, or the wire has moved in its terminal; before any sea passage in any case.',
    lower: 'A note when lens and dye show a swaging mark and no crack.',
    harms: ['rig-failure', 'injury'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [rigUnderLoad, aloft, 'Dye penetrant is flammable and hard to wash off teak and gelcoat.'],
    related: ['rig-swage-crosswise-crack', 'rig-same-age', 'rig-broken-strands', 'rig-swage-bent'],
    diagram: 'swage-crack-lengthwise',
    alsoCalled: ['swage', 'longitudinal crack', 'split swage', 'roll swage', 'terminal fitting'],
  },
  {
    key: 'rig-swage-crosswise-crack',
    system: 'rig-sails',
    title: 'Swaged terminal with a crosswise crack',
    lookFor:
      'Look round the neck where barrel meets eye, fork or thread, and round the eye beside its pin, with a lens and dye penetrant. A crack across the fitting comes from bending to and fro. Ask whether the end has a toggle and whether the stay could swing on it: forestays with furlers and lower shrouds are the usual places.',
    observed: 'A swaged terminal of {item}, {location}, had a crack across its neck, {size} long.',
    consequence:
      'This is fatigue. A crack across a fitting grows with each load and the fitting parts without further warning; the mast may follow. The other fittings have bent as often.',
    recommendation:
      'She is not to sail until it is replaced. Secure the mast with halyards to strong points and have a rigger renew the wire and its terminals, put a toggle where one is lacking, and examine all fittings of the same age. Consider the whole set.',
    urgency: 'before-use',
    harms: ['rig-failure', 'injury'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [
      rigUnderLoad,
      aloft,
      'Nobody goes up this mast until the failed stay has been backed up by a rigger.',
    ],
    related: ['rig-swage-lengthwise-crack', 'rig-toggle-missing', 'rig-same-age'],
    diagram: 'swage-crack-crosswise',
    alsoCalled: ['transverse crack', 'fatigue crack', 'cracked swage', 'terminal cracked across'],
  },
  {
    key: 'rig-same-age',
    system: 'rig-sails',
    title: 'Standing rigging past its usual life, or as old as a failed part',
    lookFor:
      'Ask for the rigger’s invoice; without one, take the rig to be as old as the boat or its last proved renewal. Look for mixed terminals and bright single wires, which show that parts were renewed alone. Age is not damage, but it tells how hard to look and what an insurer will ask. Miles and climate count as well as years.',
    observed:
      'The standing rigging was {age} old by {item}. No later renewal was shown, but {count} parts had been replaced singly.',
    consequence:
      'Stainless rigging fails from inside terminals and by fatigue, which no look from outside excludes. Parts of one age have borne the same loads; when one has failed, the others are near it.',
    recommendation:
      'Have a rigger unstep the mast and examine wire, terminals, rigging screws, tangs and chainplates, and renew the set where he cannot vouch for it. Ten to fifteen years is the usual span in the trade (common practice, no source); ask the insurer for his.',
    urgency: 'next-layup',
    raise:
      'Before use when cracks or broken wires are found in more than one part, and within 30 days before an ocean passage.',
    lower: 'A note when a rigger’s dated report vouches for it.',
    harms: ['rig-failure', 'injury'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [aloft, rigUnderLoad],
    related: ['rig-swage-lengthwise-crack', 'rig-broken-strands', 'rig-chainplate-crevice-corrosion'],
    alsoCalled: ['rigging age', 're-rig', 'rig replacement', 'ten-year rule'],
  },
  {
    key: 'rig-broken-strands',
    system: 'rig-sails',
    title: 'Broken wires in a shroud or stay',
    lookFor:
      'Wrap a rag round the wire and slide it along, first at the ends: a broken wire catches. Look where it enters each terminal, over spreader tips and where it goes through rollers. A wire standing off, a bulge or a lay that has opened counts. Do not use bare hands.',
    observed: 'In {item} {count} broken wires were found {location}. The wire measured {size}.',
    consequence:
      'The strands left carry more and break in their turn, as all have bent as often. Where one wire has gone at a terminal, others inside it often have.',
    recommendation:
      'Do not sail on it. Have a rigger renew the wire and look for what made it bend: no toggle, a seized sheave or a slack rig.',
    urgency: 'before-use',
    harms: ['rig-failure', 'injury'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [rigUnderLoad, aloft, 'Broken wires tear skin: wear gloves and look before feeling.'],
    related: ['rig-swage-crosswise-crack', 'rig-same-age', 'rig-toggle-missing'],
    alsoCalled: ['meat hooks', 'stranded wire', 'broken strand', 'fish hooks'],
  },
  {
    key: 'rig-swage-bent',
    system: 'rig-sails',
    title: 'Swaged terminal bent like a banana',
    lookFor:
      'Look along the barrel from two sides: it should be straight and the wire leave it in the same line. A curve was made in the swaging machine or by a blow. A barrel with flats or ridges was rolled badly. Compare with others of the set, and see whether it has since cracked.',
    observed: 'A swaged terminal of {item}, {location}, was bent by {size} over its length.',
    consequence:
      'The outer side of the bend carries the load, and the wire is bent where it leaves, so both tire early.',
    recommendation:
      'Have the wire renewed by a rigger at the next lay-up, sooner where cracks are found, and the others of the same set examined.',
    urgency: 'next-layup',
    raise: 'Before use when a crack or a broken wire is found at the bend.',
    lower: 'A note when the bend is barely seen and dye shows nothing.',
    harms: ['rig-failure'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [rigUnderLoad],
    related: ['rig-swage-lengthwise-crack', 'rig-toggle-missing'],
    alsoCalled: ['banana swage', 'bent swage', 'bent terminal'],
  },
  {
    key: 'rig-mechanical-terminal-loose',
    system: 'rig-sails',
    title: 'Screwed wire terminal opened, rusty inside or not locked',
    lookFor:
      'Look at the joint between body and end of terminals that are assembled by hand: threads showing, no thread locking, sealant squeezed out or rust weeping. The wires should come out evenly all round. Open one of the set at lay-up to see cone and wires; use a new cone or wedge when closing it.',
    observed: 'A screwed terminal of {item}, {location}, was open or rusty at its joint, {extent}.',
    consequence:
      'Made well, these hold as much as the wire and can be opened. Loose or wrongly assembled, they let the wire slip out of the cone.',
    recommendation:
      'Have a rigger take it apart, cut back to bright wire where length allows, fit a new cone or wedge, seal and lock it.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when wires are crossed, stick out beside the cone, or the body turns by hand.',
    harms: ['rig-failure'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [rigUnderLoad],
    related: ['rig-swage-lengthwise-crack', 'rig-same-age'],
    alsoCalled: ['swageless terminal', 'compression terminal', 'mechanical terminal', 'cone terminal'],
  },
);
