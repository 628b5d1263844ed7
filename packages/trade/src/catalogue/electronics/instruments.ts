import { batteriesAndTerminals } from '../cautions.ts';
import { entries } from '../entry.ts';

export const electronicsEntries = entries(
  {
    key: 'electronics-compass-disturbed',
    system: 'electronics',
    title: 'Steering compass disturbed, with bubble or no deviation card',
    lookFor:
      'Switch speakers, radio, wipers, lights and phones on and off and watch the card. Look for steel near it, also in lockers beneath and on the other side of the bulkhead. Sight a charted transit and compare. A bubble is from a leak or cold; a stuck card is worn. Ask for a deviation card and its date.',
    observed:
      'The compass {location} swings by {reading} when {item} is switched. No deviation card was found aboard.',
    consequence:
      'A course steered by a false card sets her off the chart she is steered by, just when the plotter has failed.',
    recommendation:
      'Move or shield what disturbs it, twist its supply wires, and have it swung by a compass adjuster with the deviation card posted by it.',
    urgency: 'next-layup',
    raise: 'Within days for passage making.',
    lower: 'A note for a small deviation on card.',
    harms: ['loss-of-control'],
    references: [],
    worksheets: [],
    cautions: ['Keep clear of the wheel while another person steers the test runs.'],
    related: ['electronics-chart-outdated', 'electronics-radar-mount-loose'],
    alsoCalled: ['deviation', 'compass card', 'compass adjuster', 'magnetic'],
  },
  {
    key: 'electronics-vhf-weak',
    system: 'electronics',
    title: 'VHF radio weak: aerial, connector or feed poor',
    lookFor:
      'Call for a radio check with a station some distance off, on a working channel, never on the distress channel. Look for green in the plug at aerial and set, a cracked base, chafed cable, and a supply that drops while transmitting. A meter in the line tells reflected power. Weak receiving with good transmitting often means a noisy device aboard: switch things off one by one.',
    observed:
      'The radio {location} was weak or unreadable on test; supply measured {reading} while transmitting.',
    consequence: 'A distress call may not be heard.',
    recommendation:
      'Renew connectors and aerial cable, check the supply and measure the standing wave ratio. Work aloft is for a rigger.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where it does not transmit at all and no other means is aboard.',
    lower: 'A note for weak handheld sets as spare.',
    harms: ['loss-of-control', 'unlawful'],
    references: ['47 CFR Part 80'],
    worksheets: ['dc-voltage-drop'],
    cautions: [
      batteriesAndTerminals,
      'Keep clear of the aerial while transmitting, and do not touch bare connectors.',
    ],
    related: ['electronics-identity-wrong', 'electronics-emergency-aerial-missing', 'dc-connections-poor'],
    alsoCalled: ['marine radio', 'antenna', 'SWR', 'PL-259', 'coax'],
  },
  {
    key: 'electronics-identity-wrong',
    system: 'electronics',
    title: 'Radio or AIS still programmed with a former owner’s number',
    lookFor:
      'Read the number in the menus of the radio and the AIS, and compare both with the station licence and with each other. See whether position reaches the radio: its screen should show coordinates that change. A second set with a number of its own, as for a tender, may be right. Beacons carry the same fault; see the entry on them.',
    observed:
      'The identity programmed in {item} is {reading}; it does not agree with the papers shown. The radio shows no position.',
    consequence: 'Rescuers look for the wrong boat or owner; a distress alert without position loses time.',
    recommendation:
      'Have a qualified dealer set the right number, put the station licence in the owner’s name with the proper authority, and connect the position feed.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use for a passage out of mobile coverage.',
    harms: ['unlawful', 'loss-of-control'],
    references: ['47 CFR Part 80', 'ITU-R M.493', 'ITU-R M.1371'],
    worksheets: [],
    cautions: [
      'Never send a distress alert to test a set: use its own self-test or a routine call as its handbook directs.',
    ],
    related: ['electronics-vhf-weak', 'electronics-chart-outdated', 'life-beacon'],
    alsoCalled: ['MMSI', 'AIS', 'transponder', 'DSC', 'digital selective calling'],
  },
  {
    key: 'electronics-depth-log-failing',
    system: 'electronics',
    title: 'Depth or speed instrument failing or wrong',
    lookFor:
      'Measure depth with a lead beside the boat, and compare with a set keel offset. Check the log over a known distance. A steady wrong figure is an offset; a dancing figure is air, fouling or wiring. Look at paddle and connector.',
    observed: 'The instrument {location} read {reading} when measured depth was {size}.',
    consequence: 'She may be sailed aground on a figure believed to be right.',
    recommendation:
      'Clean, set the offset, and write on the instrument what it shows: depth below keel or surface. Replace the sender if it stays wrong.',
    urgency: 'next-layup',
    raise: 'Within days where depth cannot be known at all.',
    lower: 'A note for a speed log fouled with weed.',
    harms: ['loss-of-control'],
    references: [],
    worksheets: ['speed-runs'],
    cautions: ['Do not draw the paddle afloat unless its valve or blank has been proved.'],
    related: ['through-hull-transducer-loose', 'electronics-compass-disturbed'],
    alsoCalled: ['echo sounder', 'depth sounder', 'fathometer', 'log', 'transducer'],
  },
  {
    key: 'electronics-chart-outdated',
    system: 'electronics',
    title: 'Charts aboard out of date, and no paper or second set',
    lookFor:
      'Read the edition date of charts in the plotter and on paper, and the correction list. See whether a second means of navigation exists and is not fed from the same fuse. Compare the plotter position with a fixed point at the berth.',
    observed: 'Charts {location} are dated {date}; no second set was found.',
    consequence: 'Buoys and depths change; a screen that fails leaves nothing.',
    recommendation: 'Update charts, carry paper or a second independent set, and know how to use it.',
    urgency: 'note',
    raise: 'Next lay-up or before a passage to unfamiliar waters.',
    harms: ['loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [],
    related: ['electronics-compass-disturbed', 'electronics-identity-wrong'],
    alsoCalled: ['chart plotter', 'chartplotter', 'navigation', 'ENC'],
  },
  {
    key: 'electronics-radar-mount-loose',
    system: 'electronics',
    title: 'Radar, aerial or camera mount loose or in people’s way',
    lookFor:
      'Push the scanner bracket from the ground or from a rigger’s chair, look for cracked welds, loose clamps, chafing cable and water at the gland. See whether a person standing is in the beam at arm’s length, and whether it shades a navigation light.',
    observed: 'The mount {location} moves when pushed; its cable is chafed {extent}.',
    consequence: 'It can fall on people, and a chafed cable shorts or leaks.',
    recommendation:
      'Repair or renew the bracket with proper bolts, seal the cable entry, and set the scanner above head height. Leave work aloft to a rigger.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where the bracket is cracked.',
    harms: ['injury', 'deterioration'],
    references: [],
    worksheets: ['navigation-lights'],
    cautions: [
      'Radar off and its breaker locked before anyone goes aloft or stands before it. Nobody stands below.',
    ],
    related: ['electronics-vhf-weak', 'electronics-emergency-aerial-missing', 'navigation-lights-obscured'],
    alsoCalled: ['radome', 'scanner', 'antenna mount', 'arch'],
  },
  {
    key: 'electronics-emergency-aerial-missing',
    system: 'electronics',
    title: 'No spare aerial or second way to call for help',
    lookFor:
      'Ask what works if the mast falls: handheld radio with its battery charged, an emergency aerial with the right plug, beacon, telephone. Try each. Look at how far the boat goes from shore.',
    observed: 'No emergency aerial or charged handheld radio was found {location}.',
    consequence: 'When the mast goes the masthead aerial goes with it.',
    recommendation:
      'Carry a handheld radio and a fitting emergency aerial with its plug tried, where they can be reached from the cockpit.',
    urgency: 'note',
    raise: 'Next lay-up or before offshore sailing.',
    harms: ['loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [],
    related: ['electronics-vhf-weak', 'electronics-identity-wrong', 'life-beacon'],
    alsoCalled: ['emergency antenna', 'handheld VHF', 'dismasting'],
  },
);
