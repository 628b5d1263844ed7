import { entries } from '../entry.ts';

export const distressEntries = entries(
  {
    key: 'life-raft-overdue',
    system: 'life-saving',
    title: 'Life raft overdue for service or badly stowed',
    lookFor:
      'Read the service date and persons on the canister or valise and the certificate. See that it launches without tools by one person, that the painter is made fast to a strong point, and that a hydrostatic release is in date and rigged as drawn. Straps with seized buckles and a raft buried under stores are usual. Water stains from the drain holes are normal.',
    observed:
      'The life raft {location}, for {count} persons, was last serviced in {date}. Launching it is hindered by {item}.',
    consequence: 'A raft that leaks, has an empty cylinder or cannot be got over the side is no raft.',
    recommendation:
      'Send it to a station approved by its maker. Secure it in a cradle with a quick release, the painter fast to structure, and check that it holds all aboard.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before going offshore or where the law or insurance requires the raft.',
    lower:
      'A note for a boat in sheltered water that does not need one, provided it is marked out of service.',
    harms: ['injury', 'unlawful'],
    references: ['ISO 9650'],
    worksheets: ['carriage'],
    cautions: [
      'Do not pull the painter or open the canister: it inflates with force.',
      'Rafts are heavy: two people, and not from a ladder.',
    ],
    related: ['life-flares-expired', 'life-recovery-missing', 'life-beacon'],
    diagram: 'liferaft-release',
    alsoCalled: ['liferaft', 'hydrostatic release', 'valise'],
  },
  {
    key: 'life-flares-expired',
    system: 'life-saving',
    title: 'Flares or other distress signals expired',
    lookFor:
      'Read the date on each, count by kind and for day and night, and see them dry, reachable and together. Electric lights: look for the approval and a battery. Expired ones mixed with good ones are the usual finding: look at each.',
    observed: 'Of the distress signals {location}, {count} have expired; the latest date found is {date}.',
    consequence:
      'Old flares may not light, or burn the user. Out of date they do not count towards what the law asks.',
    recommendation:
      'Renew the set to the rules of flag and voyage; hand the expired ones in where they are taken (chandler, coastguard or fire service locally) and do not throw them away or fire them.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use where no signals in date remain.',
    harms: ['injury', 'unlawful'],
    references: ['33 CFR 175.110', '33 CFR 175.125', '33 CFR 175.130'],
    worksheets: ['carriage'],
    cautions: [
      'Handle old pyrotechnics as little as possible, pointed away, out of heat. Corroded or weeping ones are left alone and reported.',
    ],
    related: ['life-raft-overdue', 'life-beacon', 'electronics-emergency-aerial-missing'],
    alsoCalled: ['visual distress signals', 'pyrotechnics', 'rockets', 'smoke', 'VDS'],
  },
  {
    key: 'life-beacon',
    system: 'life-saving',
    title: 'Emergency beacon with an expired battery or wrong registration',
    lookFor:
      'Read the battery’s date and the beacon’s number, make the self-test only as its handbook says, and compare name, boat and telephone with the registration. A beacon bought with the boat is often registered to the last owner. See the bracket or release in date.',
    observed:
      'The emergency beacon {location} has a battery dated {date}; its registration does not name the present owner.',
    consequence:
      'A dead battery gives no alarm. A wrong registration sends rescuers to the wrong person first.',
    recommendation:
      'Have the battery renewed by the maker’s service, register the beacon with this owner and boat, and note it on the list aboard.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before going offshore.',
    harms: ['injury', 'unlawful'],
    references: ['47 CFR 80.1061'],
    worksheets: [],
    cautions: [
      'Never switch it on to try it: the alarm brings real rescuers. Self-test only, as its handbook says.',
    ],
    related: ['life-raft-overdue', 'life-flares-expired', 'electronics-identity-wrong'],
    alsoCalled: ['EPIRB', 'PLB', '406 MHz', 'distress beacon'],
  },
  {
    key: 'life-recovery-missing',
    system: 'life-saving',
    title: 'No means to get a person back aboard',
    lookFor:
      'Ask how a tired person in the water gets back, with one person left on board. Look for a ladder that reaches well below the water, can be let down from the water and is firmly fixed. Pull hard on it by hand. Look for a lifting sling and tackle. Folded ladders with corroded hinges and no cord are common.',
    observed: 'There is no boarding ladder that can be let down and used from the water {location}.',
    consequence:
      'A person beside a high-sided boat loses strength within minutes and one other person cannot lift them.',
    recommendation:
      'Fit a ladder that can be let down from the water and reaches below it, and carry a sling with tackle. Practise with it in warm water.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use for a boat sailed short-handed offshore.',
    harms: ['injury'],
    references: ['ISO 15085', 'ABYC H-41'],
    worksheets: [],
    cautions: ['Engine off and propeller still before anyone tries a ladder from the water.'],
    related: ['life-jackets-too-few', 'life-harness-jackstays'],
    alsoCalled: ['man overboard', 'MOB', 'bathing ladder', 'recovery sling', 're-boarding'],
  },
);
