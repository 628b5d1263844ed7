import { entries } from '../entry.ts';

export const wornEntries = entries(
  {
    key: 'life-jackets-unserviced',
    system: 'life-saving',
    title: 'Inflatable life jackets not serviced, or of the wrong size',
    lookFor:
      'Open every jacket. Weigh the cylinder against the weight stamped on it, see it screwed home by hand, read the date of the automatic head, blow the bladder up by mouth and leave it overnight. Look for chafe at folds, rust round the cylinder and a missing crotch strap. Foam jackets: press and see that they return. Count them and sizes against those aboard, children too.',
    observed:
      'Of the life jackets {location}, {count} were out of date or defective. The oldest date found was {date}.',
    consequence:
      'A jacket with a loose or spent cylinder does not inflate, and one of the wrong size rides up over the face.',
    recommendation:
      'Have inflatable jackets serviced by a station approved by their maker each year or as marked, renew cylinders and heads, discard failed bladders, and provide one to fit each person aboard.',
    urgency: 'before-use',
    lower: 'Within 30 days when enough sound jackets remain for all aboard.',
    harms: ['injury', 'unlawful'],
    references: ['ISO 12402', '33 CFR 175.15'],
    worksheets: ['carriage'],
    cautions: ['Unscrew the cylinder before opening the head: a jacket that fires in a cabin can hurt.'],
    related: ['life-jackets-too-few', 'life-harness-jackstays'],
    alsoCalled: ['PFD', 'personal flotation device', 'lifejacket', 'auto-inflate', 'rearming kit'],
  },
  {
    key: 'life-jackets-too-few',
    system: 'life-saving',
    title: 'Too few life jackets, or no throwable aid',
    lookFor:
      'Count jackets of the right kind and size for all who will be aboard, the crew of the delivery included. Look for the throwable aid ready to hand on deck, with light and line where carried. A jacket in its shop wrapping under the berth is not ready. Labels must be legible.',
    observed:
      'Aboard are {count} life jackets; they are stowed {location}. No throwable aid was found ready.',
    consequence: 'Someone is left without a jacket or without anything to hold while the boat turns back.',
    recommendation:
      'Provide one approved jacket in its size for each person, within reach, and a throwable aid by the helm. The number and kind must meet the rules of the flag and place.',
    urgency: 'before-use',
    harms: ['injury', 'unlawful'],
    references: ['33 CFR 175.15', 'ISO 12402'],
    worksheets: ['carriage'],
    cautions: [],
    related: ['life-jackets-unserviced', 'life-recovery-missing'],
    alsoCalled: ['horseshoe buoy', 'lifebuoy', 'throwable cushion', 'children'],
  },
  {
    key: 'life-harness-jackstays',
    system: 'life-saving',
    title: 'Jackstays or harness lines weak or weathered',
    lookFor:
      'Run each webbing jackstay through the hand: stiff, chalky, faded or frayed webbing has lost strength in the sun. Look at stitching, at what the ends are fastened to and at backing pads below. Read dates on harness lines, and see that hooks close by themselves. Wire jackstays underfoot roll.',
    observed:
      'The jackstays {location} are weathered {extent}; their ends are fastened to {item}. They are {age} old.',
    consequence:
      'They are the last thing between someone and the sea, and sun-rotten webbing breaks at a fraction of its strength.',
    recommendation:
      'Renew webbing and lines of uncertain age, anchor them to through-bolted points with backing, and take webbing in at the end of each season.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before going offshore.',
    harms: ['injury'],
    references: ['ISO 12401', 'ISO 15085'],
    worksheets: [],
    cautions: ['Do not try them with your own weight near the rail.'],
    related: [
      'life-jackets-unserviced',
      'life-recovery-missing',
      'deck-guard-wire-corroded',
      'deck-stanchion-base-loose',
    ],
    alsoCalled: ['jackline', 'tether', 'safety line'],
  },
);
