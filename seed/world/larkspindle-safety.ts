import type { FindingSpec } from './types.ts';

/** Findings on gas, electrics, fire and life-saving gear of Larkspindle's insurance survey. */
export const larkspindleSafety: FindingSpec[] = [
  {
    key: 'lk-gas-locker',
    system: 'gas',
    position: { along: 0.92, height: 0.84, side: 'starboard' },
    title: 'Drain of the gas locker blocked, hole into the lazarette',
    observed:
      'The 19 mm drain in the bottom of the gas locker is blocked by rope and leaves: a cupful of water stood for ten minutes. A cable has been led through a 22 mm hole in the locker side into the lazarette, 90 mm above the bottom, and not sealed.',
    consequence:
      'Gas is heavier than air. A leak at bottle or regulator cannot run overboard and will pass into the boat instead, where a spark can set it off.',
    recommendation:
      'Shut the bottle valve and do not use gas. Clear the drain, reroute the cable and close the hole gas-tight. Have the whole system tested by a licensed gas fitter before it is used again.',
    urgency: 'before-use',
    harms: ['fire-explosion'],
    references: ['ISO 10239 (liquefied petroleum gas systems)'],
    photos: [
      {
        scene: 'gas-locker-blocked',
        caption: 'Bottom of the gas locker: blocked drain, cable hole at right',
      },
    ],
    state: 'cleared',
    clearances: [
      {
        sentBy: 'gethin',
        sentDay: -40,
        statement: 'Drain cleared and flushed.',
        workDoneBy: 'Stonecleat Boatyard',
        workDoneDay: -41,
        photos: [],
        invoice: {
          number: 'SC-1179',
          from: 'Stonecleat Boatyard',
          fromAddress: 'Slip Road, Sallowhythe',
          to: 'Idony Wenloweth',
          vessel: 'Larkspindle',
          day: -41,
          currency: 'GBP',
          lines: [{ text: 'Clear drain of gas locker', amountMinor: 4400 }],
        },
        decision: {
          decision: 'return',
          by: 'hesper',
          day: -39,
          reason:
            'The invoice covers the drain only. Please show the cable hole closed and the fitter’s test.',
        },
      },
      {
        sentBy: 'gethin',
        sentDay: -36,
        statement:
          'Cable rerouted over the coaming, hole glassed over both sides. Gas fitter tested the system under pressure: no drop in ten minutes. His certificate is on board.',
        workDoneBy: 'Stonecleat Boatyard, with a licensed gas fitter',
        workDoneDay: -37,
        photos: [{ scene: 'gas-locker-clear', caption: 'Locker cleaned, drain open, hole closed' }],
        decision: { decision: 'accept', by: 'hesper', day: -34, reason: 'Drain, hole and test all shown.' },
      },
    ],
  },
  {
    key: 'lk-gas-hose',
    system: 'gas',
    position: { along: 0.9, height: 0.9, side: 'starboard' },
    title: 'Gas hose eleven years old and cracked at the regulator',
    observed:
      'The low-pressure hose between regulator and bulkhead is marked with a date eleven years ago. Fine cracks show where it bends below the regulator. The regulator body is rusted over its lower half.',
    consequence: 'A perished hose may leak gas into the locker or crack through when the bottle is changed.',
    recommendation:
      'Have a licensed gas fitter replace hose and regulator and test the system. Replace the hose afterwards at the interval its maker or local rules state.',
    urgency: 'within-days',
    withinDays: 14,
    harms: ['fire-explosion'],
    references: ['ISO 10239 (liquefied petroleum gas systems)'],
    photos: [
      { scene: 'gas-hose-dated', caption: 'Date on the gas hose' },
      { scene: 'gas-regulator', caption: 'Bottle, regulator and hose as found' },
    ],
    state: 'evidence-sent',
    clearances: [
      {
        sentBy: 'idony',
        sentDay: -2,
        statement:
          'Hose and regulator replaced by the fitter when he tested the system. I had overlooked sending his bill.',
        workDoneBy: 'Emberlode Gas Services (licensed fitter)',
        workDoneDay: -37,
        photos: [{ scene: 'gas-regulator-new', caption: 'New regulator and hose' }],
        invoice: {
          number: 'EG 0458',
          from: 'Emberlode Gas Services',
          fromAddress: '19 Lampglass Lane, Sallowhythe',
          to: 'Idony Wenloweth',
          vessel: 'Larkspindle',
          day: -36,
          currency: 'GBP',
          lines: [
            { text: 'Marine regulator, 30 mbar', amountMinor: 5850 },
            { text: 'Gas hose 8 mm, 0.6 m, with fittings', amountMinor: 2420 },
            { text: 'Pressure test and certificate', amountMinor: 9500 },
          ],
        },
      },
    ],
  },
  {
    key: 'lk-battery',
    system: 'dc-electrical',
    position: { along: 0.74, height: 0.45, side: 'starboard' },
    title: 'Domestic batteries loose, terminal connection slack',
    observed:
      'The two 110 Ah domestic batteries under the aft berth slide 60 mm fore and aft; the strap is missing. The positive terminal of the forward one turns by hand and its lead has melted insulation for 20 mm. No terminal covers.',
    consequence:
      'A loose connection heats and arcs. A battery that shifts can short on the engine mounting beside it or spill acid.',
    recommendation:
      'Secure both batteries against movement in every direction, remake the damaged lead, cover the terminals and check the fuse at the battery. The work should be done by a competent marine electrician.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['fire-explosion', 'injury'],
    references: ['ISO 13297 (electrical systems)', 'ISO 10133 (historical, in force when built)'],
    photos: [{ scene: 'battery-loose', caption: 'Domestic batteries, positive lead with melted insulation' }],
    items: [
      'Secure both batteries against movement in every direction',
      'Remake the damaged lead of the forward battery',
      'Cover the terminals',
    ],
    extensions: [
      {
        by: 'hesper',
        day: -12,
        dueDay: 21,
        reason: 'The electrician has no free day before; the batteries stay disconnected until then.',
      },
    ],
    comments: [
      {
        by: 'idony',
        day: -13,
        text: 'The electrician can come in five weeks. May the batteries stay disconnected until then?',
        visibleTo: ['insurer'],
      },
      {
        by: 'hesper',
        day: -12,
        text: 'Yes, with the terminals taped. I have moved the date.',
        visibleTo: ['owner'],
      },
    ],
    state: 'returned',
    clearances: [
      {
        sentBy: 'idony',
        sentDay: -18,
        statement: 'I tightened the terminal, fitted covers and put a strap over both batteries.',
        workDoneBy: 'Owner',
        workDoneDay: -19,
        photos: [{ scene: 'battery-strapped', caption: 'Batteries strapped and covered' }],
        decision: {
          decision: 'return',
          by: 'hesper',
          day: -15,
          reason:
            'Strap and covers are seen. The melted lead is still in place under the cover at the left: please have it remade and send a photo with the cover lifted.',
        },
      },
    ],
  },
  {
    key: 'lk-shore-inlet',
    system: 'ac-electrical',
    position: { along: 0.86, height: 1, side: 'starboard' },
    title: 'Shore-power inlet scorched at the live pin',
    observed:
      'The 16 A inlet in the cockpit coaming is browned and its plastic has flowed round the live pin. The matching plug is burnt. Behind it one conductor is held by two strands.',
    consequence: 'The inlet will overheat again under load. Fire may start where nobody sees it.',
    recommendation:
      'Do not connect shore power. Have a licensed electrician replace inlet, lead and plug, and test polarity, earthing and the residual-current device.',
    urgency: 'before-use',
    harms: ['fire-explosion', 'shock'],
    references: ['ISO 13297 (electrical systems)'],
    photos: [{ scene: 'shore-inlet-scorched', caption: 'Shore-power inlet, live pin at lower right' }],
    state: 'cleared',
    clearances: [
      {
        sentBy: 'idony',
        sentDay: -30,
        statement:
          'Inlet, cable tail and shore lead replaced, residual-current device tested: trips in 24 ms.',
        workDoneBy: 'Voltmarrow Marine Electrical (licensed)',
        workDoneDay: -32,
        photos: [{ scene: 'shore-inlet-new', caption: 'New inlet in place' }],
        decision: {
          decision: 'accept',
          by: 'hesper',
          day: -29,
          reason: 'Replaced and tested by a licensed firm.',
        },
      },
    ],
  },
  {
    key: 'lk-extinguisher',
    system: 'fire-safety',
    position: { along: 0.6, height: 0.8, side: 'starboard' },
    title: 'Galley fire extinguisher without pressure',
    observed:
      'The needle of the 2 kg powder extinguisher at the companionway is in the red. Its last service label is six years old. The engine space has a fire port but no extinguisher small enough to use through it.',
    consequence: 'A fire in the galley or the engine space could not be fought.',
    recommendation:
      'Replace the extinguisher and have all of them serviced as their maker directs. Provide one that can be discharged through the fire port without opening the engine space.',
    urgency: 'within-days',
    withinDays: 14,
    harms: ['fire-explosion'],
    references: ['ISO 9094 (fire protection)'],
    photos: [{ scene: 'extinguisher-red', caption: 'Gauge of the galley extinguisher' }],
    state: 'cleared',
    clearances: [
      {
        sentBy: 'idony',
        sentDay: -38,
        statement:
          'Two new extinguishers: 2 kg at the companionway, 1 kg with hose beside the engine casing.',
        workDoneBy: 'Owner',
        workDoneDay: -38,
        photos: [{ scene: 'extinguisher-green', caption: 'New extinguisher, gauge in the green' }],
        decision: {
          decision: 'accept',
          by: 'hesper',
          day: -37,
          reason: 'Replaced; the second covers the engine.',
        },
      },
    ],
  },
  {
    key: 'lk-flares',
    system: 'life-saving',
    position: { along: 0.56, height: 0.8, side: 'starboard' },
    title: 'Hand flares and rockets out of date',
    observed:
      'Four red hand flares and two parachute rockets in the chart table are past the date marked on them, the oldest by three years. Two casings are swollen.',
    consequence: 'They may not fire, or may burn the person holding them.',
    recommendation:
      'Replace them with signals in date and hand the old ones in where local rules say. Do not set them off for practice.',
    urgency: 'within-days',
    withinDays: 14,
    harms: ['injury', 'unlawful'],
    references: [
      'SOLAS chapter V, regulation 29 (life-saving signals)',
      'COLREGs Annex IV (distress signals)',
    ],
    photos: [{ scene: 'flares', caption: 'Flares from the chart table, dates upward' }],
    state: 'open',
  },
  {
    key: 'lk-liferaft',
    system: 'life-saving',
    position: { along: 0.34, height: 1, side: 'centre' },
    title: 'Liferaft overdue for service',
    observed:
      'The label of the four-person raft on the coachroof states that service fell due two years ago. Its hydrostatic release carries no date. The painter is made fast.',
    consequence: 'The raft may not inflate, and food, water and signals in it are out of date.',
    recommendation: 'Have the raft serviced by a station its maker names, and the release replaced.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['injury'],
    references: ['ISO 9650 (inflatable liferafts)'],
    photos: [{ scene: 'liferaft-label', caption: 'Service label on the raft canister' }],
    state: 'open',
  },
  {
    key: 'lk-nav-light',
    system: 'navigation-lights',
    position: { along: 0.02, height: 1, side: 'port' },
    title: 'Port sidelight lens crazed and dim',
    observed:
      'The red lens on the pulpit is crazed over most of its face and has faded to pink. Lit, it can be made out by day at 30 m only. The starboard lamp is clear.',
    consequence: 'The light may not be seen at the distance the rules ask for, nor be taken for red.',
    recommendation: 'Replace the lamp with one approved for vessels under 12 m and check its arc from ahead.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['unlawful', 'injury'],
    references: ['COLREGs Rules 21 and 22 and Annex I'],
    photos: [{ scene: 'nav-light', caption: 'Port sidelight on the pulpit', gps: true }],
    state: 'open',
  },
];
