import { entries } from '../entry.ts';

export const coolingOilEntries = entries(
  {
    key: 'engine-cooling-flow',
    system: 'engine',
    title: 'Raw-water flow weak: impeller, strainer or intake',
    lookFor:
      'Watch the water from the exhaust and compare with what is usual; feel the exhaust hose, which should be no more than hand-warm after a run (common practice, no source). Open strainer and pump with the seacock shut. Look for missing impeller vanes: they lie in the heat exchanger. Weed or barnacles in the intake and a hose that flattens when the engine revs give the same sign.',
    observed:
      'The raw-water flow of the {side} engine was weak; the cause was found at {item}. The temperature reached {reading}.',
    consequence:
      'The engine overheats and the exhaust hose burns through. The alarm often comes after the damage.',
    recommendation:
      'Renew the impeller and search for the lost pieces, clean strainer and intake, renew a soft suction hose, and try the overheat alarm. Carry a spare impeller and gasket.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when the engine overheats or no water comes.',
    harms: ['loss-of-control', 'deterioration', 'flooding'],
    references: [],
    worksheets: ['engine-readings'],
    cautions: [
      'Seacock shut before the strainer or pump is opened, and opened again after. Keep clear of belts.',
      'Never open a hot header tank.',
    ],
    related: [
      'exhaust-hose-perished',
      'engine-cooling-leak',
      'exhaust-run-back',
      'seacock-seized',
      'outboard-cooling-weak',
    ],
    alsoCalled: ['impeller', 'overheating', 'sea water pump', 'cooling water'],
  },
  {
    key: 'engine-cooling-leak',
    system: 'engine',
    title: 'Cooling water or raw water leaking from the engine',
    lookFor:
      'Dry the parts and look again after a run: white or green crust round the pump weep hole, hose ends, exchanger caps and core plugs. Coolant is coloured and sticky, raw water leaves salt. Look underneath for a wet alternator or starter. A few drops from a pump seal at start differ from a steady drip.',
    observed: 'Water leaks from {item} of the {side} engine, with corrosion {extent}.',
    consequence:
      'Salt water on the starter, alternator and mountings corrodes them. A failed joint stops the engine or, on the raw-water side, floods the boat.',
    recommendation:
      'Renew the seal, hose or gasket, clean and protect what was wetted, and pressure-test the closed circuit.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use for a raw-water leak that is steady, or coolant that needs filling each trip.',
    lower: 'At the next lay-up for a slight old crust that stays dry.',
    harms: ['flooding', 'loss-of-control', 'deterioration'],
    references: [],
    worksheets: ['engine-readings'],
    cautions: ['Engine stopped and cool; hot coolant scalds. Do not reach past turning belts.'],
    related: ['engine-cooling-flow', 'engine-oil-emulsified', 'corrosion-engine-anode'],
    alsoCalled: ['water pump seal', 'heat exchanger', 'coolant leak', 'antifreeze'],
  },
  {
    key: 'engine-oil-emulsified',
    system: 'engine',
    title: 'Water in the engine or gearbox oil',
    lookFor:
      'Draw the dipstick and look under the filler cap and at oil caught on paper: grey or milky oil holds water. A little cream only under the cap after cold running is condensation. Smell gearbox oil for burning. Keep a sample for analysis by a laboratory; note the hours since the last change. Fresh oil tells nothing: ask when it was changed.',
    observed: 'The oil of {item} is milky. A sample was kept for analysis.',
    consequence: 'Bearings run without a film and seize. Sea water in the cylinders rusts them within days.',
    recommendation:
      'Do not run the machine. Have a marine engineer find the path (cooler, gasket, exhaust) and repair it, flush, and change oil and filter until clean. Have the sample analysed.',
    urgency: 'before-use',
    lower: 'Within 30 days when only traces showed in the analysis.',
    harms: ['loss-of-control', 'deterioration'],
    references: [],
    worksheets: ['engine-readings'],
    cautions: [
      'An engine with water in its cylinders must not be cranked: the engineer turns it by hand first.',
      'Used oil harms skin; do not let it into the bilge.',
    ],
    related: [
      'exhaust-run-back',
      'exhaust-elbow-corroded',
      'engine-cooling-leak',
      'stern-drive-water-in-oil',
    ],
    alsoCalled: ['milky oil', 'mayonnaise', 'water in oil', 'oil analysis'],
  },
  {
    key: 'engine-oil-leak',
    system: 'engine',
    title: 'Engine or gearbox losing oil, oil in the bilge',
    lookFor:
      'Wipe clean, run and look for the highest wet place: oil runs down and back. Look in the drip tray, under the bell housing, at turbocharger and filter. Oil on the tray below with clean surfaces is old. Ask how much is added between changes, and look at the bilge water for a film.',
    observed: 'Oil leaks from {item} of the {side} engine and lies in the bilge {extent}.',
    consequence:
      'Oil on hot parts or sound insulation feeds a fire. Pumped out with bilge water it pollutes and is an offence.',
    recommendation:
      'Have the seal or gasket renewed, clean the bilge and remove soaked insulation, and fit a tray that holds what still drips.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when oil reaches the exhaust or turbocharger, or the level falls within hours.',
    lower: 'At the next lay-up for a seep that does not drip.',
    harms: ['fire-explosion', 'pollution', 'unlawful', 'deterioration'],
    references: ['33 CFR 155.450', 'ISO 9094'],
    worksheets: ['engine-readings'],
    cautions: [
      'Oil makes the sole slippery. Belts and hot exhaust near.',
      'The bilge pump stays off until oil is taken up with absorbent.',
    ],
    related: ['engine-insulation-soaked', 'engine-oil-emulsified', 'bilge-oil-present'],
    alsoCalled: ['rear main seal', 'oily bilge', 'drip tray', 'sheen'],
  },
);
