import { entries } from '../entry.ts';
import { aloft, belowTheMast, rigUnderLoad } from './cautions.ts';

/** Running rigging, furling gear, winches, sails and rod. */
export const runningRiggingEntries = entries(
  {
    key: 'rig-furler-halyard-wrap',
    system: 'rig-sails',
    title: 'Furling gear: halyard can wrap round the foil',
    lookFor:
      'With the sail hoisted, look with a glass at the angle between halyard and forestay: it should stand off from the foil, with the swivel near its top. Turn the drum by hand: it should run smoothly both ways and never be forced by a winch. Look at the foil joints and the wire at the top and foot, which the gear hides; the halyard shows flats where it wrapped.',
    observed:
      'The halyard of the furling sail lay almost along the foil, within {reading} of it. The gear was stiff to turn.',
    consequence:
      'A wrapped halyard jams the gear with sail set, unlays the forestay when forced, and has brought masts down.',
    recommendation:
      'Fit a halyard lead or a strop at the head of the sail so that the swivel comes where the maker’s drawing shows. Have a rigger examine the forestay within the foil.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when wires are broken, the foil has parted or the gear has been forced.',
    lower: 'A note when the angle is right and the gear only wants washing.',
    harms: ['rig-failure', 'loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [aloft, belowTheMast, 'Hoist and furl only in light wind, head to wind.'],
    related: ['rig-toggle-missing', 'rig-broken-strands'],
    diagram: 'furler-halyard',
    alsoCalled: ['roller furling', 'halyard wrap', 'foil', 'furler'],
  },
  {
    key: 'rig-running-rigging-chafed',
    system: 'rig-sails',
    title: 'Halyards and sheets chafed, or their sheaves worn',
    lookFor:
      'Run each line through the hand over its whole length, hoisting one by its neighbour; look at the part that lies over the sheave when hoisted, at clutches and at shackle knots. Aloft look for sheaves that do not turn, cheeks spread, sharp edges and wire halyards with burrs. Stiff, sun-baked cover with a sound core can serve for a while.',
    observed: 'The cover of {item} was chafed {location}, {extent}. The sheave there did not turn freely.',
    consequence:
      'A halyard that parts drops the sail or topping lift on those below, and it is the line a person hangs from.',
    recommendation:
      'Renew the line in the right size for its sheave and clutch, free or renew the sheave, and take off what chafed it.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the core shows on a halyard, mainsheet or topping lift.',
    lower: 'At the next lay-up for worn cover on lightly loaded lines.',
    harms: ['injury', 'loss-of-control', 'deterioration'],
    references: [],
    worksheets: [],
    cautions: [
      aloft,
      belowTheMast,
      'Never go aloft on a halyard that has not been examined over its whole length.',
    ],
    related: ['rig-winch-slipping'],
    alsoCalled: ['halyard', 'sheets', 'clutch', 'masthead sheave'],
  },
  {
    key: 'rig-winch-slipping',
    system: 'rig-sails',
    title: 'Winch slips, or its base is loose',
    lookFor:
      'Turn each winch in both gears and listen: pawls should click evenly. Load it by hand with a short line and try it backward; a drum that gives has a stuck pawl or weak spring. Rock it on its base and look below for washers sunk into the deck. A handle that jumps out has a worn socket.',
    observed: 'The winch {location} slipped when loaded by hand. Its base moved by {reading}.',
    consequence:
      'A pawl that lets go spins the handle back and breaks hands and arms; a loose base draws its bolts through the deck.',
    recommendation:
      'Have it stripped, cleaned and fitted with new pawls and springs, oil on the pawls and not grease, and rebedded on a backing plate where it moves.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when it gives way under load.',
    lower: 'At the next lay-up when it only clicks dry and holds.',
    harms: ['injury', 'loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [
      'Keep the handle out and fingers clear when loading a doubtful winch; never stand in the line of its rope.',
      rigUnderLoad,
    ],
    related: ['rig-running-rigging-chafed'],
    alsoCalled: ['pawls', 'self-tailer', 'winch service'],
  },
  {
    key: 'rig-sail-cloth-weak',
    system: 'rig-sails',
    title: 'Sails weak in stitching or cloth from the sun',
    lookFor:
      'Look at the leech and foot that stay in the sun when the sail is furled, and pick at stitches with a pin: those that part are finished. With the owner’s leave try to tear the cloth between finger and thumb at the leech. Look at corners, slides, batten pockets and chafe at spreaders. Dirt and mould are looks, not strength.',
    observed: 'The stitching of {item} was weak {location}, {extent}. Its age was given as {age}.',
    consequence: 'It splits in a squall when it is most needed, and its seams go one after another.',
    recommendation: 'Have a sailmaker examine, restitch or replace it, and renew the sun strip.',
    urgency: 'next-layup',
    raise: 'Within 30 days when it is the only sail of its kind and a passage is planned.',
    lower: 'A note when there is life left and only the sun strip is tired.',
    harms: ['deterioration', 'loss-of-control'],
    references: [],
    worksheets: [],
    cautions: ['Spread sails in light wind only; a flogging sail and its clew injure.'],
    related: ['rig-furler-halyard-wrap'],
    alsoCalled: ['sacrificial strip', 'UV strip', 'sun strip', 'sail inventory'],
  },
  {
    key: 'rig-rod-heads-unchecked',
    system: 'rig-sails',
    title: 'Rod rigging whose heads have not been examined for long',
    lookFor:
      'Look at the heads in their sockets at both ends, with a lens and dye penetrant; rods should hang straight and turn in their seats when slack. A rod kinked or with nicks, and a seat worn to a ridge, are faults. Ask for papers of the last re-heading, and the makers’ interval by years and miles. Rod gives no broken wires for a warning.',
    observed: 'The rod rigging was {age} old. The last examination of its heads on record was in {date}.',
    consequence: 'The cold-formed head is where rod cracks, unseen in its socket. It parts at once.',
    recommendation:
      'Have a rigger with experience of rod draw it, dye-test every head, and re-head or renew at the maker’s interval.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before use when a head is cracked or a rod is kinked at its socket.',
    lower: 'A note when papers within the maker’s interval are shown.',
    harms: ['rig-failure'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [rigUnderLoad, aloft],
    related: ['rig-same-age', 'rig-swage-crosswise-crack'],
    alsoCalled: ['rod rigging', 'cold head', 're-heading'],
  },
);
