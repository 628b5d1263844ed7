import { entries } from '../entry.ts';

export const lightEntries = entries(
  {
    key: 'navigation-lights-dead',
    system: 'navigation-lights',
    title: 'Navigation light does not burn, or is dim or intermittent',
    lookFor:
      'Switch each on alone at dusk or with the lantern shaded and look at it from outside, masthead ones too. Tap each lantern and wiggle its lead. Look in for water, green contacts and a blackened lamp. Measure the voltage at the lantern while lit: a small loss there dims it greatly. A lit panel lamp proves only that current is drawn, not which light burns.',
    observed:
      'Of the navigation lights {count} did not burn or flickered. The voltage at the lantern {location} was {reading}.',
    consequence:
      'Another boat sees the wrong vessel, or nothing, and has no time to give way. The boat is also outside the rules from sunset.',
    recommendation:
      'Renew lamp, contacts and cable as found, carry spares, and measure the voltage again. Try all lights at each sunset. Until then do not go out at night or in poor visibility.',
    urgency: 'before-use',
    lower: 'Within 30 days for a boat used by day only.',
    harms: ['loss-of-control', 'unlawful'],
    references: ['COLREG rule 20', 'COLREG rule 23', 'COLREG rule 25', '33 CFR 83.20', 'ABYC A-16'],
    worksheets: ['navigation-lights', 'dc-voltage-drop'],
    cautions: [
      'A masthead light is reached by someone qualified to go aloft on two lines, not by the surveyor alone.',
    ],
    related: ['navigation-lights-lamp-unsuited', 'navigation-lights-obscured', 'dc-conductors-too-small'],
    alsoCalled: ['running lights', 'nav lights', 'sidelights', 'masthead light', 'stern light'],
  },
  {
    key: 'navigation-lights-obscured',
    system: 'navigation-lights',
    title: 'Navigation light hidden by gear or in the wrong place',
    lookFor:
      'Walk round the boat in the dinghy or ashore with the light on and note where it disappears. Look for a dinghy on davits, an outboard on the rail, an anchor, a raft, a bow platform or a flag over the stern light. See the sails too. A mast hides an all-round light over a small angle, which the rules allow.',
    observed: 'The navigation light {location} is hidden by {item} within the arc it should show.',
    consequence:
      'From that side nothing is seen, and an approaching boat cannot tell which way this one goes.',
    recommendation:
      'Move the light to where its whole arc is clear, or move what hides it. Check the height and distance between lights again.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before night use when a side or stern light is hidden over much of its arc.',
    harms: ['loss-of-control', 'unlawful'],
    references: ['COLREG rule 21', 'COLREG Annex I', '33 CFR 83.21', 'ISO 16180', 'ABYC A-16'],
    worksheets: ['navigation-lights'],
    cautions: ['In the dark keep clear of the edge of the quay, and do not go off in the dinghy alone.'],
    related: ['navigation-lights-sector', 'navigation-lights-dead'],
    diagram: 'sidelight-obscured',
    alsoCalled: ['obstructed light', 'blind arc', 'davits', 'bimini'],
  },
  {
    key: 'navigation-lights-sector',
    system: 'navigation-lights',
    title: 'Sidelights cross, or lantern set at the wrong angle',
    lookFor:
      'Stand dead ahead at a distance with the boat at normal trim and look for the point where red becomes green: both should be seen only close to the centre line. Walk abeam and see each cut off at its mark. Look for lanterns screwed to a sheer or bow that curves away, mounted upside down or without their screens, and for colours exchanged at a repair.',
    observed:
      'The sidelight on the {side} side is set wrongly: from ahead it is seen across the centre line, or it shows beyond its arc abaft the beam.',
    consequence: 'Another vessel ahead sees the wrong colour, and may alter course into this one.',
    recommendation:
      'Set the lantern on a wedge square to the centre line and level at normal trim, fit the screens and repeat the check from ahead. Replace a lantern that lacks them.',
    urgency: 'before-use',
    lower: 'Within 30 days when the error is slight and the boat does not go out at night.',
    harms: ['loss-of-control', 'unlawful'],
    references: ['COLREG rule 21', 'COLREG Annex I', '33 CFR 83.21', '33 CFR 84.14', 'ISO 16180'],
    worksheets: ['navigation-lights'],
    cautions: ['In the dark, stand clear of traffic when looking from the quay or dinghy.'],
    related: ['navigation-lights-obscured', 'navigation-lights-lamp-unsuited'],
    alsoCalled: ['cut-off angle', 'red and green swapped', 'bow light', 'combined lantern'],
  },
  {
    key: 'navigation-lights-lamp-unsuited',
    system: 'navigation-lights',
    title: 'Lamp replaced by an LED the lantern was not made for',
    lookFor:
      'Read the lantern’s plate for lamp and distance, then look at the lamp inside. A diode cluster off the lantern’s focus changes the arcs, the cut-off and the distance it carries; a white LED behind red or green glass often gives the wrong colour. Listen on the radio with it on: some disturb VHF. A complete LED lantern with its own approval is fine.',
    observed: 'The lantern {location} has {item} fitted in place of the lamp it was approved with.',
    consequence:
      'Colour, distance and sectors may be wrong though it looks bright nearby, and the light no longer has its approval.',
    recommendation:
      'Return to the stated lamp, or fit a complete LED lantern with approval for the boat’s length and place.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before night use when the colour or cut-off is plainly wrong, or it disturbs the radio.',
    harms: ['loss-of-control', 'unlawful'],
    references: ['COLREG rule 22', 'COLREG Annex I', '33 CFR 83.22', 'ISO 16180', 'ABYC A-16'],
    worksheets: ['navigation-lights'],
    cautions: ['Filament lamps are hot. Switch off before the lens is opened.'],
    related: ['navigation-lights-sector', 'navigation-lights-range'],
    alsoCalled: ['LED bulb', 'retrofit', 'festoon', 'VHF interference'],
  },
  {
    key: 'navigation-lights-range',
    system: 'navigation-lights',
    title: 'Lantern not made for the length of the boat, or unmarked',
    lookFor:
      'Compare the mark on each lantern with the boat’s length. The rules ask for greater distances from 12 m length on, and again from 20 m for the masthead light and from 50 m. A lantern with no mark cannot be judged. Lens crazing and salt reduce the distance.',
    observed: 'The lantern {location} is marked for {reading}, less than the length of this boat calls for.',
    consequence: 'It is seen later than the rules intend, and an insurer or court will ask why.',
    recommendation: 'Fit lanterns marked and approved for the boat’s length, and keep their papers aboard.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before night use when lenses are crazed so that the light is plainly weak.',
    lower: 'At the next lay-up for a boat that does not go out at night.',
    harms: ['unlawful', 'loss-of-control'],
    references: ['COLREG rule 22', '33 CFR 83.22', 'COLREG Annex I', '33 CFR 84.14'],
    worksheets: ['navigation-lights'],
    cautions: [],
    related: ['navigation-lights-lamp-unsuited', 'navigation-lights-sector'],
    alsoCalled: ['visibility', 'nautical miles', 'candela'],
  },
);
