import type { FindingSpec } from './types.ts';

/** Findings on hull, deck, skin fittings and underwater gear of Larkspindle's insurance survey. */
export const larkspindleHull: FindingSpec[] = [
  {
    key: 'lk-heads-seacock',
    system: 'through-hulls',
    position: { along: 0.48, height: 0.55, side: 'port' },
    title: 'Heads inlet seacock seized, body pink where scraped',
    observed:
      'The 25 mm heads inlet seacock, under the port settee 0.4 m aft of the main bulkhead, could not be moved by hand. The handle is bent. Green and white crust covers the neck between body and tail; scraped with a knife the metal under it is pink, not yellow, over about a third of the circumference.',
    consequence:
      'Pink metal shows that zinc has been lost and the fitting has become brittle. It may part when leaned on or worked, and cannot be shut if the hose fails. It is 0.35 m below the waterline: water would come in faster than the fitted pumps can be expected to clear it.',
    recommendation:
      'Replace seacock, through-hull and tail as a set with fittings whose alloy is stated by the maker to resist dezincification, bedded and backed as the maker directs. Work each of the other five seacocks at the same haul-out and report any that do not turn.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['flooding'],
    references: ['ISO 9093 (seacocks and through-hull fittings)'],
    photos: [
      { scene: 'seacock-corroded', caption: 'Heads inlet seacock from inboard, crust at neck and tail' },
      { scene: 'seacock-scraped', caption: 'The same fitting after scraping: pink metal at the neck' },
    ],
    state: 'open',
  },
  {
    key: 'lk-cockpit-drain',
    system: 'through-hulls',
    position: { along: 0.8, height: 0.32, side: 'port' },
    title: 'Port cockpit drain hose split below the waterline, one clip only',
    observed:
      'The 38 mm hose from the port cockpit drain to its seacock, reached through the lazarette, is split lengthwise for 45 mm just above the tail. It is held by one clip, and the band of that clip has rusted through half its width.',
    consequence:
      'The split is below the waterline when the boat heels to port. Once it opens the cockpit drains into the boat and the sea follows through the seacock.',
    recommendation:
      'Replace the hose with one made for underwater use, held by two stainless clips at each end where the tail is long enough. Keep the seacock shut until that is done.',
    urgency: 'before-use',
    harms: ['flooding'],
    references: ['ISO 9093 (seacocks and through-hull fittings)'],
    photos: [
      { scene: 'hose-split', caption: 'Split in port cockpit drain hose, above the tail' },
      { scene: 'hose-single-clip', caption: 'Single rusted clip on the same hose', orientation: 6 },
    ],
    state: 'cleared',
    clearances: [
      {
        sentBy: 'gethin',
        sentDay: -33,
        statement:
          'Both cockpit drain hoses renewed with 38 mm wire-reinforced hose, two stainless clips at each end. Boat floated and drains run for 20 minutes without a weep.',
        workDoneBy: 'Stonecleat Boatyard',
        workDoneDay: -35,
        photos: [{ scene: 'hose-renewed', caption: 'New hose with two clips, port side' }],
        invoice: {
          number: 'SC-1187',
          from: 'Stonecleat Boatyard',
          fromAddress: 'Slip Road, Sallowhythe',
          to: 'Idony Wenloweth',
          vessel: 'Larkspindle',
          day: -34,
          currency: 'GBP',
          lines: [
            { text: 'Cockpit drain hose 38 mm, 3.2 m', amountMinor: 6080 },
            { text: 'Stainless hose clips, 8 off', amountMinor: 2760 },
            { text: 'Labour, 3.5 hours', amountMinor: 19250 },
          ],
        },
        decision: {
          decision: 'accept',
          by: 'hesper',
          day: -31,
          reason: 'Both drains renewed by the yard, photo and invoice agree.',
        },
      },
    ],
  },
  {
    key: 'lk-deck-core',
    system: 'cored-structure',
    position: { along: 0.5, height: 1, side: 'starboard' },
    title: 'Wet core in side deck around the starboard genoa track',
    observed:
      'Sounding with a plastic hammer is dull over 1.1 m by 0.25 m of the starboard side deck inboard of the genoa track. The moisture meter reads 24 to 28 on its relative scale there and 9 to 11 on the port side. Brown water weeps from two track bolts when the deck is trodden on.',
    consequence:
      'Balsa that stays wet rots and lets the two skins move apart. The deck is still stiff under foot, but the area will grow and the track may work loose under load.',
    recommendation:
      'Lift the track, establish how far the core is wet, dry or replace it, and rebed the bolts with the core sealed back from each hole. Until then load that track lightly and keep a record of readings at the same eight points.',
    urgency: 'within-days',
    withinDays: 90,
    harms: ['structural-failure', 'deterioration'],
    references: ['ISO 12215-5 (hull construction and scantlings)'],
    photos: [
      { scene: 'deck-core-weep', caption: 'Brown weep at second track bolt, starboard side deck' },
      { scene: 'deck-moisture-meter', caption: 'Moisture meter on the dull area', orientation: 3 },
    ],
    state: 'accepted-as-is',
    clearances: [
      {
        sentBy: 'idony',
        sentDay: -24,
        statement:
          'I have booked the deck work for the spring lay-up. The eight points were read again and are unchanged. I ask to sail until then with a smaller headsail and the forward end of the track unused.',
        workDoneBy: 'Owner',
        workDoneDay: -26,
        photos: [
          { scene: 'deck-moisture-meter', caption: 'Reading at point 5, four weeks after the survey' },
        ],
        decision: {
          decision: 'accept-as-is',
          by: 'hesper',
          day: -20,
          reason: 'Deck failure from this cause is not covered until the work is done.',
          limit:
            'A smaller headsail, the forward end of the track unused, readings sent again before launching',
          limitDay: 150,
        },
      },
    ],
  },
  {
    key: 'lk-stanchion',
    system: 'deck',
    position: { along: 0.64, height: 1, side: 'port' },
    title: 'Gelcoat cracked round the base of the port gate stanchion',
    observed:
      'Star cracks up to 60 mm long run from the inboard edge of the port gate stanchion base. The base lifts 2 mm under a firm pull at the top. Below deck the two inboard nuts stand on penny washers with no backing pad.',
    consequence:
      'A stanchion that moves lets water into the deck core and may not hold a person thrown against the guardrail.',
    recommendation:
      'Remove the base, open and repair the cracks, fit a backing pad that spreads the load well beyond the base, and rebed.',
    urgency: 'within-days',
    withinDays: 90,
    harms: ['injury', 'deterioration'],
    references: ['ISO 15085 (prevention of falling overboard)'],
    photos: [
      { scene: 'stanchion-crack', caption: 'Star cracks at inboard edge of port gate stanchion base' },
    ],
    state: 'open',
  },
  {
    key: 'lk-blisters',
    system: 'hull',
    position: { along: 0.8, height: 0.16, side: 'starboard' },
    title: 'Scattered blisters below the waterline, starboard quarter',
    observed:
      'About forty blisters, 4 to 15 mm across, in an area 1.6 m by 0.7 m of the starboard quarter. Three were opened: fluid with a vinegary smell, pH paper 4. The laminate under them is firm. Moisture meter readings in the area are 19 to 22 after five days ashore, 12 to 15 elsewhere.',
    consequence:
      'Moisture has reached the outer laminate. At this extent strength is not affected in our opinion, but blisters left alone grow in size and number.',
    recommendation:
      'At the next haul-out open, wash and dry the area, fill with epoxy and recoat. Count and measure again first, so that growth can be judged.',
    urgency: 'next-layup',
    harms: ['deterioration'],
    references: ['ISO 12215-5 (hull construction and scantlings)'],
    photos: [
      { scene: 'hull-blisters', caption: 'Blisters at starboard quarter, rule for scale' },
      { scene: 'hull-moisture-meter', caption: 'Meter reading inside the blistered area', gps: true },
    ],
    state: 'open',
  },
  {
    key: 'lk-cutless',
    system: 'shaft-propeller',
    position: { along: 0.77, height: 0.04, side: 'centre' },
    title: 'Wear in the shaft bearing at the P-bracket',
    observed:
      'The 30 mm shaft can be lifted 1.6 mm in the P-bracket bearing, measured with a dial gauge. The rubber stands proud at the after end. The propeller is sound, with light pitting at two blade tips.',
    consequence: 'Vibration will wear the shaft and the stern gland, and a leaking gland may follow.',
    recommendation:
      'Replace the bearing at the next haul-out and check the shaft for wear and alignment while it is out. About one twentieth of the shaft diameter is commonly taken as the limit (common practice, no source).',
    urgency: 'next-layup',
    harms: ['deterioration', 'loss-of-control'],
    references: [],
    photos: [
      { scene: 'cutless-bearing', caption: 'P-bracket bearing from aft, gap above the shaft' },
      { scene: 'propeller', caption: 'Propeller and P-bracket from the port quarter' },
    ],
    state: 'open',
  },
  {
    key: 'lk-anode',
    system: 'corrosion-protection',
    position: { along: 0.74, height: 0.04, side: 'centre' },
    title: 'Shaft anode more than four fifths wasted',
    observed:
      'What is left of the zinc collar on the propeller shaft is about 20 g against 120 g for a new one of this size. It turns loose on the shaft. Bronze of the P-bracket has a pink bloom on its after edge.',
    consequence: 'Propeller, bracket and shaft are no longer protected and will corrode in its place.',
    recommendation:
      'Fit a new anode on a clean shaft. Measure the hull potential after launching, and look for the cause if the new one is half gone within six months.',
    urgency: 'within-days',
    withinDays: 14,
    harms: ['deterioration', 'loss-of-control'],
    references: [],
    photos: [{ scene: 'anode-wasted', caption: 'Remains of the shaft anode' }],
    state: 'open',
  },
  {
    key: 'lk-rudder-gap',
    system: 'steering',
    position: { along: 0.88, height: 0.5, side: 'centre' },
    title: 'Play in the lower rudder bearing',
    observed:
      'With the rudder hung free its tip moves 9 mm athwartships. The movement is in the lower bearing; the upper one is tight. No water runs from the blade and its two halves sound alike.',
    consequence: 'The rudder will knock in a following sea, and the stock will wear.',
    recommendation: 'Drop the rudder at the next lay-up, measure stock and bearing and renew the bush.',
    urgency: 'next-layup',
    harms: ['loss-of-control'],
    references: ['ISO 12215-8 (rudders)'],
    photos: [{ scene: 'rudder-gap', caption: 'Gap at lower rudder bearing, feeler inserted' }],
    state: 'open',
  },
  {
    key: 'lk-shackle',
    system: 'ground-tackle',
    position: { along: 0.03, height: 0.9, side: 'centre' },
    title: 'Anchor shackle pin not moused',
    observed:
      'The 10 mm shackle between the 16 kg anchor and its chain has no wire or tie through the pin. The pin was hand tight. Chain measured 9.6 mm at the worst link of the first 5 m.',
    consequence: 'The pin may unscrew as the boat swings, and the anchor would be lost.',
    recommendation: 'Tighten the pin and mouse it with wire. Turn the chain end for end at the next lay-up.',
    urgency: 'note',
    harms: ['loss-of-control'],
    references: [],
    photos: [{ scene: 'anchor-shackle', caption: 'Shackle at the anchor ring, pin not secured' }],
    state: 'open',
  },
];
