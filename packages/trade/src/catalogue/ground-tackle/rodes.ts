import { entries } from '../entry.ts';
import { chainRunning, liftedAnchor } from './cautions.ts';

/** Anchor, chain and rope themselves. */
export const rodeEntries = entries(
  {
    key: 'anchor-chain-worn',
    system: 'ground-tackle',
    title: 'Anchor chain worn, rusted or stretched',
    lookFor:
      'Run out all of it, and look hardest at both ends and at the part from the wet bottom of the locker. Measure the diameter where links bear on each other, in two directions, at several places. Measure the length of ten links pulled straight, worn against unworn, to see stretch. Rust that comes off in flakes, seized or bent links, and a chain that jumps on its gypsy are signs; brown colour on full-sized links is not yet wear.',
    observed: 'The {size} chain was worn to {reading} where its links bear, {location}, and rusted {extent}.',
    consequence:
      'A link breaks by its area: a tenth gone from the diameter takes about a fifth of the strength.',
    recommendation:
      'Renew the chain when the wear passes the maker’s limit or a tenth of its diameter (common practice, no source). Turn it end for end, or have it galvanised again by a firm that re-tests it, when it is only rusty.',
    urgency: 'next-layup',
    raise: 'Before use when links are cracked, bent or stretched, or the wear is past the limit.',
    lower: 'A note when the rust is on the surface and the diameter full.',
    harms: ['loss-of-control', 'deterioration'],
    references: ['ISO 4565', 'ABYC H-40'],
    worksheets: ['chain-wear', 'rode'],
    cautions: [chainRunning],
    related: ['anchor-joining-link-oversize', 'anchor-locker-drain-blocked', 'anchor-bitter-end-fixed'],
    alsoCalled: ['rusty chain', 'galvanising', 'chain stretch', 'links'],
  },
  {
    key: 'anchor-rope-chafed',
    system: 'ground-tackle',
    title: 'Anchor rope chafed or badly joined to its chain',
    lookFor:
      'Run the rope through the hand, look at the splice, thimble and fairlead, and where it bends in the locker. Hardened, glazed or fuzzed lay, mould and a splice with few tucks are faults. A knot in place of a splice halves its strength and jams in the windlass. Rope kept dry and out of the sun lasts long.',
    observed:
      'The anchor rope of {size} was chafed {location}, {extent}. It was joined to the chain by {item}.',
    consequence:
      'A chafed rope parts where it crosses the bow, which is where nobody looks on a night at anchor.',
    recommendation:
      'Renew it with rope of the same stretch and size, spliced to the chain with a thimble, or by a splice made for the windlass, and carry anti-chafe gear.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when a strand is cut or the splice slips.',
    lower: 'A note when only the surface is fuzzy.',
    harms: ['loss-of-control'],
    references: ['ABYC H-40'],
    worksheets: ['rode'],
    cautions: [chainRunning],
    related: ['anchor-bitter-end-fixed', 'anchor-rode-too-light'],
    alsoCalled: ['warp', 'rode', 'thimble', 'splice'],
  },
  {
    key: 'anchor-rode-too-light',
    system: 'ground-tackle',
    title: 'Anchor or rode too light or too short for the boat',
    lookFor:
      'Weigh the anchor or read its mark, measure chain and rope, and compare with the boat’s length, beam, windage and the waters she uses. The worksheet works out load, scope and the weakest part. Ask how she has lain in wind. Windage counts for more than weight.',
    observed:
      'The anchor weighed {size} on {reading} of {material}. That is less than the load table and scope ask for a boat of this length, beam and windage.',
    consequence: 'The anchor drags when the wind comes round or rises, and a short chain lets it break out.',
    recommendation:
      'Fit an anchor and rode of the size that a current load table asks for the boat’s length, beam and windage, with the weakest joint as strong as the chain, and a second anchor ready.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when she is to lie unattended or in open roads.',
    lower: 'A note for a boat that lies in berths and anchors by day only.',
    harms: ['loss-of-control'],
    references: ['ABYC H-40', 'ISO 15084'],
    worksheets: ['rode'],
    cautions: [liftedAnchor],
    related: ['anchor-shackle-wrong-kind', 'anchor-rope-chafed', 'anchor-second-missing'],
    alsoCalled: ['scope', 'catenary', 'undersized anchor', 'holding power'],
  },
  {
    key: 'anchor-bent',
    system: 'ground-tackle',
    title: 'Anchor bent, its hinge worn or welds cracked',
    lookFor:
      'Sight along the shank, look at the flukes from ahead, and work a hinge: it should not close past its stop or bind with mud. Look for cracks at welds, lost lead and worn points. A straight rust streak along a weld is a crack until dye shows none.',
    observed: 'The anchor was bent {extent}. A crack or worn hinge was seen {location}.',
    consequence:
      'A bent shank or fluke sets the anchor at the wrong angle: it doesn’t dig in, or comes out when the pull turns.',
    recommendation: 'Renew it. Do not straighten it cold or weld it in the yard without the maker’s advice.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when a crack is found in a weld or fluke.',
    lower: 'A note when a straight-edge shows it true.',
    harms: ['loss-of-control', 'structural-failure'],
    references: [],
    worksheets: [],
    cautions: [liftedAnchor],
    related: ['anchor-rode-too-light', 'anchor-shackle-wrong-kind'],
    alsoCalled: ['bent shank', 'fluke', 'stock'],
  },
  {
    key: 'anchor-second-missing',
    system: 'ground-tackle',
    title: 'No second anchor, or it can’t be got out',
    lookFor:
      'Ask for the second anchor and bring it on deck; time it. It wants its own chain and rope made up, a clear path to the bow or stern and no tools. One without rode, or in the bottom of a locker under everything, is as good as missing.',
    observed: 'No second anchor was ready: {item}.',
    consequence:
      'When the first anchor is lost, fouled or not enough, there is nothing to hold her off a shore.',
    recommendation: 'Stow a second anchor with its rode made up where it can be let go in a few minutes.',
    urgency: 'note',
    raise: 'Within 60 days for a boat going along open coasts.',
    harms: ['loss-of-control'],
    references: ['ABYC H-40'],
    worksheets: ['rode'],
    cautions: [liftedAnchor],
    related: ['anchor-rode-too-light', 'anchor-stowage-insecure'],
    alsoCalled: ['kedge', 'spare anchor', 'stern anchor'],
  },
);
