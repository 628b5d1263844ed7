import { entries } from '../entry.ts';
import { chainRunning, liftedAnchor } from './cautions.ts';

/** What joins anchor, chain and rope. */
export const anchorJointEntries = entries(
  {
    key: 'anchor-shackle-moused-wrongly',
    system: 'ground-tackle',
    title: 'Anchor shackle moused to the chain, or not moused at all',
    lookFor:
      'Look how the pin of each shackle in the ground tackle is locked. The wire belongs through the eye of the pin and round the body of the shackle, two or three turns, twisted and tucked in. Wire led to a link of the chain is wrong, as is a cable tie, tape or a rusted wire. Try the pin: it should be tight before it is moused.',
    observed:
      'The shackle {location} was moused with {material} wire that led from its pin to the chain and not round the body of the shackle.',
    consequence:
      'Chain and shackle turn against each other. Wire between them is broken by that movement, or turns the pin out itself. When the pin goes, the anchor is lost.',
    recommendation:
      'Tighten the pin and mouse it with stout wire of a metal that suits the shackle, through the eye of the pin and round the body of the shackle, not round the chain. Look at it each time the anchor comes up.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when the pin is loose or there is no mousing and she is to lie at anchor.',
    lower: 'A note when it was remade while the surveyor looked on.',
    harms: ['loss-of-control', 'structural-failure'],
    references: ['ABYC H-40'],
    worksheets: ['rode'],
    cautions: [chainRunning, liftedAnchor],
    related: ['anchor-shackle-wrong-kind', 'anchor-joining-link-oversize', 'anchor-swivel-side-loaded'],
    diagram: 'shackle-mousing',
    alsoCalled: ['seizing wire', 'safety wire', 'mousing', 'moused', 'shackle pin'],
  },
  {
    key: 'anchor-shackle-wrong-kind',
    system: 'ground-tackle',
    title: 'Quick link or chain shackle where an anchor shackle belongs',
    lookFor:
      'See what joins chain to anchor and rope to chain. A bow-shaped anchor shackle lets the chain swing each way without jamming on the shank. A narrow chain shackle (D) binds there, and a quick link is weak when pulled sideways and opens when its sleeve turns. Read the working load marked on it: without a mark there is no figure. Go by marks and not by size; a plain shackle often needs to be one size above the chain (common practice, no source).',
    observed:
      'The anchor chain was joined to {item} by a {material} quick link or chain shackle of {size}. Its marked working load was {reading}.',
    consequence:
      'It is weaker than the chain, jams so that it is levered open as the boat swings, and can unscrew. It is the weakest place in the whole ground tackle.',
    recommendation:
      'Fit a galvanised anchor (bow) shackle with a marked working load not less than that of the chain, the way round that lets both sides swing freely. Tighten its pin and mouse it round the body of the shackle.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when the link is open, bent or cracked, or she is to lie at anchor.',
    lower: 'A note for a marked chain shackle of enough strength that swings freely.',
    harms: ['loss-of-control'],
    references: ['ABYC H-40', 'RR-C-271'],
    worksheets: ['rode', 'chain-wear'],
    cautions: [chainRunning, liftedAnchor],
    related: ['anchor-shackle-moused-wrongly', 'anchor-swivel-side-loaded', 'anchor-chain-worn'],
    diagram: 'anchor-connector',
    alsoCalled: ['carabiner', 'quick links', 'D shackle', 'dee shackle', 'bow shackle', 'rapid link'],
  },
  {
    key: 'anchor-joining-link-oversize',
    system: 'ground-tackle',
    title: 'Joining link or shackle too large for the windlass',
    lookFor:
      'Run the whole chain out, by hand and by the windlass, and look at every join: it must fit the pockets of the gypsy and pass the stripper and hawse without jumping. Look for bright marks, bent strippers and chipped pockets. Riveted and screwed joining links must be of the chain’s own size and grade; a link that fits because it is thin is too weak instead.',
    observed:
      'The chain of {size} was joined by {item} at {reading} from the anchor. The join was too large for the gypsy and jumped or jammed on it.',
    consequence:
      'The chain jams or jumps off, running out unheld, just when it is to be shortened or let go in a hurry. Fingers are caught freeing it.',
    recommendation:
      'Use one length of chain, or a joining link made for that size of chain with a working load not less than its own, closed by the maker’s method and proved to pass the gypsy. Never a shackle in the part that runs over the windlass.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when it jams, or the chain jumped while it was tried.',
    lower: 'A note when it lies in the last metres, which never come up to the gypsy.',
    harms: ['loss-of-control', 'injury'],
    references: ['ABYC H-40'],
    worksheets: ['chain-wear', 'rode'],
    cautions: [chainRunning],
    related: ['anchor-shackle-wrong-kind', 'anchor-chain-worn', 'windlass-unsafe-controls'],
    diagram: 'windlass-joining-link',
    alsoCalled: ['C-link', 'split link', 'chain connector', 'chain joiner', 'gypsy', 'wildcat'],
  },
  {
    key: 'anchor-swivel-side-loaded',
    system: 'ground-tackle',
    title: 'Swivel next to the anchor shank, side-loaded or of mixed metals',
    lookFor:
      'See whether the swivel’s jaws lie on the shank itself: when the boat swings, the chain pulls them sideways. Two links or a shackle between takes that away. Look at the swivel’s pin, locking screw and shaft for rust lines, and whether it turns. Stainless next to galvanised loses the zinc of the latter.',
    observed:
      'A {material} swivel of {size} was fixed straight to the shank of the anchor, with no link between to take a side pull.',
    consequence:
      'Jaws opened by a side pull let go of the anchor, and a shaft that rusts inside the swivel is not seen.',
    recommendation:
      'Take it out, as many boats need none, or put two links of chain and a shackle between swivel and anchor. Use one marked for the chain’s working load, with its screws locked.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when it is bent, cracked or its screw is loose.',
    lower: 'A note when it is articulated by its maker for side pulls and marked with its load.',
    harms: ['loss-of-control'],
    references: ['ABYC H-40'],
    worksheets: ['rode', 'galvanic-couple'],
    cautions: [chainRunning],
    related: ['anchor-shackle-wrong-kind', 'anchor-shackle-moused-wrongly'],
    diagram: 'anchor-swivel',
    alsoCalled: ['anchor swivel', 'anchor connector'],
  },
  {
    key: 'anchor-bitter-end-fixed',
    system: 'ground-tackle',
    title: 'End of the chain loose, or shackled so that it can’t be let go',
    lookFor:
      'Follow the chain to its end in the locker. A rope lashing to a strong point should hold it, long enough that it comes on deck when all the chain is out, so that it can be cut there. A shackle, nothing at all, or a small eye screwed into a panel are faults.',
    observed: 'In the chain locker the inboard end of the chain was held by {item}.',
    consequence:
      'A loose end goes overboard with everything; one shackled under load can’t be released when the anchor must be slipped in an emergency.',
    recommendation:
      'Lash it to a strong point with rope, of a length that brings the lashing on deck, and keep a knife there.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when nothing holds it and she is to lie at anchor.',
    lower: 'A note when it is shackled where the pin can be reached and freed under load.',
    harms: ['loss-of-control'],
    references: [],
    worksheets: ['rode'],
    cautions: [chainRunning],
    related: ['anchor-chain-worn', 'anchor-rope-chafed'],
    alsoCalled: ['bitter end', 'slip the anchor', 'lashing', 'tail'],
  },
);
