import { entries } from '../entry.ts';

export const engineSpaceEntries = entries(
  {
    key: 'engine-flame-arrester',
    system: 'engine',
    title: 'Backfire flame arrester missing, dirty or loose on a petrol engine',
    lookFor:
      'Look for the arrester on the air intake of each carburettor or throttle body: the marked metal element, not an air filter. See it clean, undamaged and tightly clamped, with the crankcase breather led into it. Automotive air filters look similar, and are not arresters.',
    observed: 'The petrol engine on the {side} side has {item} in place of an approved flame arrester.',
    consequence: 'A backfire shoots flame into a space that may hold petrol vapour.',
    recommendation:
      'Fit a marked marine arrester of the right size, cleaned and clamped, before the engine is started again.',
    urgency: 'before-use',
    lower: 'Within 30 days for one that is fitted and tight but dirty.',
    harms: ['fire-explosion', 'unlawful'],
    references: ['46 CFR 25.35-1', 'SAE J1928', 'ISO 13592'],
    worksheets: ['carriage'],
    cautions: [
      'Petrol vapour: air the space and check before any switch or tool. Never look into a running carburettor.',
    ],
    related: ['fuel-vapour-ventilation', 'dc-ignition-unprotected', 'fuel-hose-perished'],
    alsoCalled: ['spark arrestor', 'backfire flame arrestor', 'air cleaner', 'gasoline'],
  },
  {
    key: 'engine-insulation-soaked',
    system: 'engine',
    title: 'Sound insulation hanging, crumbling or soaked with oil',
    lookFor:
      'Press the foam above the engine and beneath the hatches: crumbling foam, foil peeling, oil and fuel in the face, and panels that hang near belts, exhaust or the blower’s intake. See whether it blocks vents, fire port or drains. A sound face in one piece is the fire barrier: cuts and holes undo it.',
    observed: 'The sound insulation {location} is loose, crumbling or soaked with oil {extent}.',
    consequence:
      'Oily foam burns fast and gives poisonous smoke. Loose pieces reach belts and hot exhaust and clog the air intake and bilge pump.',
    recommendation:
      'Remove it all and fit new insulation of low-flame kind, sealed faces and edges, held mechanically, clear of hot parts.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use where it hangs on the exhaust or belts or is wet with petrol.',
    lower: 'At the next lay-up for face cracks only.',
    harms: ['fire-explosion', 'poisoning', 'deterioration'],
    references: ['ISO 9094', 'ISO 4589-3'],
    worksheets: [],
    cautions: ['Old foam dust harms lungs: wear a mask. Old boards may hold asbestos; have them sampled.'],
    related: ['engine-oil-leak', 'fire-port-missing', 'exhaust-dry-unlagged'],
    alsoCalled: ['soundproofing', 'acoustic foam', 'insulation foil'],
  },
);
