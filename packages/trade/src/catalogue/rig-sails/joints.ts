import { entries } from '../entry.ts';
import { aloft, rigUnderLoad } from './cautions.ts';

/** Rigging screws, toggles, pins and chainplates. */
export const rigJointEntries = entries(
  {
    key: 'rig-rigging-screw-unlocked',
    system: 'rig-sails',
    title: 'Rigging screw not locked, or locked with tape or lock nuts only',
    lookFor:
      'Look at every rigging screw for split pins, rings or wire through both threads, or a lock the maker fits. Lock nuts alone work loose, tape locks nothing and hides what is below. Rings catch on sheets and pull out; pins should be short, spread about a third open and covered so that they do not tear sails and people. Take off old tape.',
    observed: 'On {count} rigging screws {location} there was no locking but {item}.',
    consequence:
      'The load wants to unlay the wire and turns the screw open, little by little. The first warning may be the mast going overboard.',
    recommendation:
      'Set the rig to its tension and pin every screw at both ends before she sails. Carry spare pins.',
    urgency: 'before-use',
    lower: 'A note when pins are in and only rings or covers are unsuitable.',
    harms: ['rig-failure', 'injury'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [rigUnderLoad],
    related: ['rig-rigging-screw-thread', 'rig-clevis-pin-wrong'],
    alsoCalled: ['turnbuckle', 'bottlescrew', 'cotter pins', 'split rings', 'unpinned'],
  },
  {
    key: 'rig-rigging-screw-thread',
    system: 'rig-sails',
    title: 'Rigging screw with too little thread, bent or galled',
    lookFor:
      'Look through the open body, or by a pin through the hole of a closed one, how far each thread reaches in: at least its own diameter and better one and a half (common practice, no source). Look along screws for a bend, and try them slack at lay-up: one that binds in stainless on stainless is galling. Cracks start in the first thread in the body and at pin holes.',
    observed: 'The rigging screw of {item} had {reading} of thread in its body on a screw of {size}.',
    consequence:
      'A screw held by a few turns strips; a bent one breaks in fatigue at the first thread. A galled one will seize when it is needed.',
    recommendation:
      'Have a rigger renew the screw and shorten or lengthen the wire as needed. Use bronze bodies or an anti-seize made for stainless, and release load before turning.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when the thread does not reach its own diameter or a screw is cracked.',
    lower: 'At the next lay-up when it is only stiff.',
    harms: ['rig-failure'],
    references: [],
    worksheets: ['rigging-wire'],
    cautions: [rigUnderLoad],
    related: ['rig-rigging-screw-unlocked', 'rig-toggle-missing'],
    alsoCalled: ['turnbuckle', 'bottlescrew', 'thread engagement', 'galling'],
  },
  {
    key: 'rig-toggle-missing',
    system: 'rig-sails',
    title: 'No toggle where a stay can swing',
    lookFor:
      'At both ends of each stay ask whether it can hinge fore-and-aft and athwartships. The forestay that carries a sail, and furling gear most of all, needs a toggle at both ends; shrouds need one at the deck when the chainplate does not lie in their line. A fork on a chainplate hinges one way only. Look for bent screws and swages as proof.',
    observed:
      'No toggle was fitted to {item} {location}, where the stay swings. Its fitting was bent {extent}.',
    consequence:
      'Each tack bends wire and terminal at the same place. That is the usual cause of a crack across a swage or of broken wires beside it.',
    recommendation:
      'Have a rigger fit a toggle of full strength, taking up the length elsewhere, and examine the end with dye penetrant.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the fitting is bent, cracked or has broken wires.',
    lower: 'At the next lay-up for a shroud that lies true in its chainplate.',
    harms: ['rig-failure'],
    references: [],
    worksheets: [],
    cautions: [rigUnderLoad, aloft],
    related: ['rig-swage-crosswise-crack', 'rig-broken-strands', 'rig-furler-halyard-wrap'],
    diagram: 'rig-toggle',
    alsoCalled: ['universal joint', 'articulation', 'toggle jaw'],
  },
  {
    key: 'rig-clevis-pin-wrong',
    system: 'rig-sails',
    title: 'Clevis pin too small, a bolt in its place, or its split pin missing',
    lookFor:
      'Look at every pin, aloft as well: it should fill its hole, bear on its plain shank over the full width and be held by a split pin. Threads of a bolt in the hole, washers to take up a wide fork and pins worn to a waist are faults. Count the split pins; feel under tape and boots.',
    observed:
      'The pin of {item}, {location}, measured {size} and was loose in its hole. Nearby {count} split pins were missing.',
    consequence:
      'A loose pin bears on a line and hammers; a thread is a row of cracks waiting. Without its split pin it works out.',
    recommendation:
      'Fit the pin of the right diameter, length and metal, with a new split pin, before she sails. Have an oval hole rebushed or the fitting renewed.',
    urgency: 'before-use',
    lower: 'Within 30 days when the pin is locked and only slightly slack in its hole.',
    harms: ['rig-failure', 'injury'],
    references: [],
    worksheets: [],
    cautions: [rigUnderLoad, aloft],
    related: ['rig-rigging-screw-unlocked', 'rig-chainplate-crevice-corrosion'],
    diagram: 'split-pin-opened',
    alsoCalled: ['cotter', 'split pin missing', 'fork pin', 'bolt for a pin'],
  },
  {
    key: 'rig-chainplate-crevice-corrosion',
    system: 'rig-sails',
    title: 'Chainplate rusted or cracked where it goes through the deck',
    lookFor:
      'Look above and below the deck with a lamp and mirror: brown runs, wet core, sealant that has let go, and stains on the bulkhead. The worst part is inside the deck and cannot be seen, so a sound look outside is no proof. Draw one, or the worst, for dye penetrant at deck level, at the bolt holes and at the bend. Chainplates laminated into the hull cannot be examined at all without cutting.',
    observed:
      'The {side} chainplate {location} was rust-stained at the deck, {extent}, and its sealant had let go.',
    consequence:
      'Stainless steel in wet, airless places pits and cracks under load. A chainplate breaks there with the mast on it.',
    recommendation:
      'Draw the chainplates at the next lay-up, the stained one first, and have a rigger test them with dye penetrant. Renew any with pits or cracks, dry and close the deck core round the slot, and bed them so that the seal can be renewed.',
    urgency: 'within-days',
    withinDays: 60,
    raise:
      'Before use when a crack is found or the chainplate has moved; before an ocean passage in any case.',
    lower: 'A note when they were drawn and tested within a few years, with papers.',
    harms: ['rig-failure', 'structural-failure', 'deterioration'],
    references: ['ISO 12215-10'],
    worksheets: ['moisture-map'],
    cautions: [
      rigUnderLoad,
      'Set up a halyard to a strong point before any chainplate is slackened: one side alone lets the mast go.',
    ],
    related: ['rig-chainplate-structure-moved', 'rig-same-age', 'rig-clevis-pin-wrong'],
    diagram: 'chainplate-crevice',
    alsoCalled: ['chain plate', 'deck slot', 'shroud plate'],
  },
  {
    key: 'rig-chainplate-structure-moved',
    system: 'rig-sails',
    title: 'Bulkhead or knee under a chainplate rotten or moving',
    lookFor:
      'Below deck, press the plywood round the chainplate bolts with a blunt awl, especially under its face veneer, and look for bolt holes drawn upward, a bulkhead come away from the hull, and lifted deck outside. Doors that jam when she is under sail are a sign. Dark stain alone can be old and dry.',
    observed: 'The structure that carries the {side} chainplate, {item}, was soft or parted {extent}.',
    consequence:
      'The chainplate is only as strong as what it is bolted to. When it draws, the rig is lost on that tack.',
    recommendation:
      'She should not sail until a yard has opened it and made a structural repair, designed by a competent person, with the chainplates drawn and tested.',
    urgency: 'before-use',
    lower: 'At the next lay-up when the wood is stained, hard and has not moved.',
    harms: ['rig-failure', 'structural-failure'],
    references: ['ISO 12215-10'],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: [rigUnderLoad],
    related: ['rig-chainplate-crevice-corrosion'],
    alsoCalled: ['rotten bulkhead', 'chainplate knee', 'tabbing'],
  },
);
