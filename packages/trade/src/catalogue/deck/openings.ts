import { entries } from '../entry.ts';

export const deckOpeningsEntries = entries(
  {
    key: 'deck-window-leaking',
    system: 'deck',
    title: 'Windows crazed, loose or leaking',
    lookFor:
      'Look across the pane against light for fine cracks from corners and fastenings. Press the pane outwards by hand and watch the seal. Find runs and stains beneath the frame, then hose from outside, low first, with someone watching within. Crazing in the face alone spoils the view; cracks through from a hole weaken the pane.',
    observed:
      'The window on the {side} side {location} is crazed, and the seal has parted {extent}. Stains run beneath it.',
    consequence:
      'A pane held by an aged seal, or cracked from its screws, can be pushed in by a sea. Meanwhile leaks rot the joinery and any core round the opening.',
    recommendation:
      'Remove and renew panes and seals as a set, with a pane of the right thickness and the glue or clamping ring the design calls for; oversize holes for plastic panes. Examine the edge of the opening and seal any core. Carry blanks for large windows offshore.',
    urgency: 'next-layup',
    raise: 'Within days, or before going offshore, where a pane moves or is cracked through.',
    lower: 'A note for crazing of the face only.',
    harms: ['flooding', 'deterioration', 'injury'],
    references: ['ISO 12216', 'ABYC H-3'],
    worksheets: ['moisture-map'],
    cautions: ['Do not press hard on a cracked pane; wear gloves.'],
    related: ['cored-edge-unsealed', 'accommodation-leak-stains', 'deck-hatch-not-tight'],
    alsoCalled: ['portlight', 'portlights', 'deadlight', 'acrylic', 'polycarbonate', 'glazing'],
  },
  {
    key: 'deck-hatch-not-tight',
    system: 'deck',
    title: 'Hatch or locker lid not weathertight or cannot be secured',
    lookFor:
      'Shut a strip of paper in the seal all round and pull: it should hold everywhere. Try every catch and hinge. Look at cockpit locker lids that open into the hull, the anchor locker, washboards and the engine hatch. Hose test with someone below. Slides and loose washboards need a means to lock them in place from inside and out.',
    observed: 'The seal of {item} {location} does not bear {extent} and {count} of its catches do not hold.',
    consequence:
      'A hatch is a hole in the deck when a sea breaks over it or the boat lies on her side. Cockpit lockers that open into the hull can fill her in moments.',
    recommendation:
      'Renew seals and catches, true the frame and fit securing for lids and washboards. Prove it with a hose before relying on it.',
    urgency: 'next-layup',
    raise: 'Within days for cockpit locker and foredeck hatches of a boat that goes to sea.',
    lower: 'A note on sheltered waters where only spray is met.',
    harms: ['flooding', 'deterioration'],
    references: ['ISO 12216', 'ISO 11812', 'ABYC H-3'],
    worksheets: [],
    cautions: ['Prop heavy lids positively before reaching beneath them.'],
    related: [
      'deck-window-leaking',
      'deck-cockpit-drains-poor',
      'access-hatch-falls',
      'accommodation-escape-blocked',
    ],
    alsoCalled: ['companionway', 'washboards', 'dropboards', 'hatch gasket'],
  },
  {
    key: 'deck-cockpit-drains-poor',
    system: 'deck',
    title: 'Cockpit drains too slow, blocked or plumbed unsafely',
    lookFor:
      'Fill the cockpit with a hose, time it emptying at her loaded trim and see whether the sole stays dry at rest. Look into the strainers for leaves. Follow each drain to its outlet: two hoses should not meet in a tee, and those below the waterline need a seacock that can be reached. A boat down by the stern may take water in through the drains.',
    observed:
      'The cockpit drain {location} runs slowly; {reading} was timed for it to empty. Its outlet is {size} bore.',
    consequence:
      'Water in the cockpit weighs the stern down and takes away stability when it is wanted most; the next sea finds her lower. A blocked drain also floods a boat left in rain.',
    recommendation:
      'Clear and enlarge the drains, lead each to its own outlet with a smooth hose, and protect them with removable strainers that pass more than the pipe. Prove with a hose after. For the size needed follow the standard.',
    urgency: 'next-layup',
    raise: 'Before next use where water stays in the cockpit afloat or a drain hose is failing.',
    harms: ['flooding', 'loss-of-control'],
    references: ['ISO 11812', 'ABYC H-4'],
    worksheets: [],
    cautions: ['Watch the bilge while filling the cockpit, and stop if water appears there.'],
    related: ['through-hull-hose-clips-poor', 'deck-hatch-not-tight', 'through-hull-outlet-no-loop'],
    alsoCalled: ['scuppers', 'self-bailing', 'self-draining cockpit'],
  },
);
