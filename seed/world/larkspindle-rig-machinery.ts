import type { FindingSpec } from './types.ts';

/** Findings on rig, steering, engine and exhaust of Larkspindle's insurance survey. */
export const larkspindleRigMachinery: FindingSpec[] = [
  {
    key: 'lk-swage',
    system: 'rig-sails',
    position: { along: 0.44, height: 0.34, side: 'port' },
    title: 'Swaged terminal of the port cap shroud cracked',
    observed:
      'A hairline crack 11 mm long runs down from the mouth of the lower swage on the port cap shroud, seen with a 10x glass and confirmed with dye. Rust weeps from it. The other seven lower terminals show none. The standing rigging is said to be 14 years old; no papers were seen.',
    consequence: 'The shroud may part without warning, and the mast with it.',
    recommendation:
      'Do not sail. Have a rigger replace both cap shrouds and inspect the whole standing rigging aloft and alow, with a written report.',
    urgency: 'before-use',
    harms: ['rig-failure', 'injury'],
    references: [],
    photos: [
      {
        scene: 'swage-cracked',
        caption: 'Lower swage of port cap shroud, crack at the mouth',
        orientation: 6,
      },
    ],
    state: 'cleared',
    clearances: [
      {
        sentBy: 'idony',
        sentDay: -28,
        statement:
          'All standing rigging was replaced, not only the cap shrouds. The rigger went aloft and found the mast fittings sound.',
        workDoneBy: 'Ravelin Rigging, Sallowhythe',
        workDoneDay: -30,
        photos: [{ scene: 'swage-new', caption: 'New lower terminal, port cap shroud', orientation: 8 }],
        invoice: {
          number: '2231',
          from: 'Ravelin Rigging',
          fromAddress: 'Unit 4, Ropewalk Yard, Sallowhythe',
          to: 'Idony Wenloweth',
          vessel: 'Larkspindle',
          day: -29,
          currency: 'GBP',
          lines: [
            { text: 'Standing rigging, 1x19 stainless wire, complete set', amountMinor: 214000 },
            { text: 'Unstep, inspect and restep mast', amountMinor: 68000 },
            { text: 'Written rig inspection', amountMinor: 12000 },
          ],
        },
        decision: {
          decision: 'accept',
          by: 'hesper',
          day: -25,
          reason: 'Complete set replaced by a rigger and inspected aloft. Nothing further is asked.',
        },
      },
    ],
  },
  {
    key: 'lk-chainplate',
    system: 'rig-sails',
    position: { along: 0.47, height: 0.33, side: 'starboard' },
    title: 'Rust weep at the starboard aft lower chainplate',
    observed:
      'Rust stains run 180 mm down the lining below the starboard aft lower chainplate. Sealant at the deck plate has let go along its after edge. The clevis pin of the toggle above is sound, its split pin is open at one leg only.',
    consequence:
      'Stainless steel that stays wet and away from air corrodes in crevices where it cannot be seen. A chainplate may fail at the deck.',
    recommendation:
      'Draw the chainplate, examine it over its whole length, renew it if pitted, and rebed. Open the split pin fully and tape it.',
    urgency: 'within-days',
    withinDays: 60,
    harms: ['rig-failure'],
    references: [],
    photos: [
      { scene: 'chainplate-weep', caption: 'Rust below starboard aft lower chainplate, from the saloon' },
      { scene: 'rigging-toggle', caption: 'Toggle above deck, split pin not opened' },
    ],
    state: 'open',
  },
  {
    key: 'lk-steering-cable',
    system: 'steering',
    position: { along: 0.83, height: 0.55, side: 'port' },
    title: 'Steering cable frayed at the port sheave',
    observed:
      'Seven wires of the port steering cable are broken where it runs over the sheave under the cockpit sole, within 120 mm. The sheave is dry and grooved. The emergency tiller was found and fits.',
    consequence: 'The cable may part when the wheel is loaded most, and the boat would not answer the helm.',
    recommendation:
      'Renew both cables and the port sheave, align and tension as the maker directs, and try the steering from hard over to hard over before the boat leaves her berth.',
    urgency: 'before-use',
    harms: ['loss-of-control', 'injury'],
    references: ['ISO 8848 (remote mechanical steering systems)'],
    photos: [{ scene: 'steering-cable', caption: 'Broken wires of the port steering cable at the sheave' }],
    state: 'open',
  },
  {
    key: 'lk-raw-water-pump',
    system: 'engine',
    position: { along: 0.63, height: 0.4, side: 'centre' },
    title: 'Raw-water pump weeping at the shaft seal',
    observed:
      'With the engine at 1 800 r/min one drop falls about every four seconds from the telltale hole of the raw-water pump. Salt has built up below it and on the starter motor. Engine hours shown: 2 140.',
    consequence:
      'Salt water on the starter and alternator will stop them in time. If the seal fails wholly the engine will overheat and water will reach the bilge.',
    recommendation: 'Overhaul or replace the pump, wash off the salt and check the starter’s connections.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['loss-of-control', 'deterioration'],
    references: [],
    photos: [
      { scene: 'pump-weeping', caption: 'Drip and salt below the raw-water pump' },
      { scene: 'engine-front', caption: 'Front of the engine, starboard side', orientation: 8 },
    ],
    state: 'open',
  },
  {
    key: 'lk-exhaust-elbow',
    system: 'exhaust',
    position: { along: 0.68, height: 0.55, side: 'centre' },
    title: 'Exhaust mixing elbow rusted at the water inlet',
    observed:
      'The cast mixing elbow is scaled with rust round the water inlet; a flake 30 mm across came away under light tapping. Soot marks the joint with the manifold over 40 mm. The rubber hose after it is hard but not cracked.',
    consequence:
      'Exhaust gas may leak into the engine space and, through it, the cabin. Water may find its way back into a cylinder.',
    recommendation:
      'Remove the elbow and renew it with its gasket. Renew the hose with one made for wet exhausts. Carry a working carbon monoxide alarm in the cabin.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['poisoning', 'flooding'],
    references: ['ISO 13363 (wet-exhaust hoses)', 'EN 50291-2 (carbon monoxide alarms in craft)'],
    photos: [
      { scene: 'exhaust-elbow', caption: 'Mixing elbow, rust at the water inlet and soot at the joint' },
    ],
    state: 'open',
  },
];
