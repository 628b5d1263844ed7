import type { FindingSpec } from './types.ts';

/** Findings of Pepper Skiffle's condition survey, written and waiting for a second reading. */
export const pepperFindings: FindingSpec[] = [
  {
    key: 'pp-bellows',
    system: 'stern-drive-outboard',
    position: { along: 0.98, height: 0.15, side: 'port' },
    title: 'Driveshaft bellows cracked between the folds',
    observed:
      'With the drive raised, cracks 8 to 20 mm long are seen in the second and third folds of the driveshaft bellows, port side. One opens to the cord when the fold is spread by hand. A trace of grease has come out.',
    consequence: 'The bellows keep the sea out of the boat. If they open the boat can sink at her berth.',
    recommendation:
      'Keep her ashore. Replace driveshaft and exhaust bellows and the shift-cable boot together, and check the joint and its bearing for water.',
    urgency: 'before-use',
    harms: ['flooding'],
    references: [],
    photos: [{ scene: 'bellows-cracked', caption: 'Bellows with the drive raised, third fold spread' }],
    state: 'draft',
  },
  {
    key: 'pp-fill-hose',
    system: 'fuel',
    position: { along: 0.86, height: 0.95, side: 'starboard' },
    title: 'Petrol fill hose cracked at the deck plate',
    observed:
      'The 38 mm fill hose is cracked round half its circumference where it turns under the deck plate. Petrol could be smelt there. The bonding wire from deck plate to tank is broken.',
    consequence: 'Petrol spilt when filling runs into the bilge. Its vapour can explode.',
    recommendation:
      'Do not fill the tank. Renew fill and vent hoses with hose marked for petrol, restore the bond, ventilate and check for vapour before the battery is connected.',
    urgency: 'before-use',
    harms: ['fire-explosion', 'pollution'],
    references: ['33 CFR 183 subpart J (fuel systems)', 'ISO 7840 (fire-resistant fuel hoses)'],
    photos: [{ scene: 'fuel-hose-cracked', caption: 'Fill hose below the deck plate' }],
    state: 'draft',
  },
  {
    key: 'pp-blower',
    system: 'engine',
    position: { along: 0.84, height: 0.15, side: 'centre' },
    title: 'Bilge blower duct has fallen off',
    observed:
      'The 75 mm intake duct of the blower lies loose in the bilge, 0.5 m from the blower. The blower runs. At the transom outlet no flow is felt with the duct off.',
    consequence:
      'Petrol vapour is not drawn from the bottom of the engine space and may explode on starting.',
    recommendation:
      'Refix the duct with its mouth in the lower third of the space and above bilge water. Measure the flow. Run the blower four minutes before starting.',
    urgency: 'before-use',
    harms: ['fire-explosion'],
    references: [
      '33 CFR 183 subpart K (ventilation)',
      'ISO 11105 (ventilation of petrol engine and tank compartments)',
    ],
    photos: [{ scene: 'blower-duct', caption: 'Duct lying in the bilge, blower at top', orientation: 6 }],
    state: 'draft',
  },
  {
    key: 'pp-flame-arrester',
    system: 'engine',
    position: { along: 0.8, height: 0.5, side: 'centre' },
    title: 'Backfire flame arrester loose and clogged',
    observed:
      'The arrester on the carburettor turns by hand; its centre nut has backed off 4 mm. Half of its elements are closed with oil and dust.',
    consequence: 'A backfire would pass into the engine space.',
    recommendation: 'Clean or replace the arrester and tighten it as the engine maker states.',
    urgency: 'before-use',
    harms: ['fire-explosion', 'unlawful'],
    references: ['46 CFR 25.35 (backfire flame control)'],
    photos: [{ scene: 'flame-arrester', caption: 'Arrester on top of the engine, nut backed off' }],
    state: 'draft',
  },
  {
    key: 'pp-battery',
    system: 'dc-electrical',
    position: { along: 0.74, height: 0.25, side: 'port' },
    title: 'Battery neither boxed nor covered beside the fuel tank',
    observed:
      'The starting battery stands on the stringer 150 mm from the petrol tank, held by a bungee cord. No cover on the positive terminal. The main feed has no fuse within 1.5 m.',
    consequence: 'A tool or the cord’s hook could short it, with petrol close by.',
    recommendation:
      'Fit a box or tray with a hold-down, cover the terminal and protect the feed near the battery. Have it done by a competent marine electrician.',
    urgency: 'within-days',
    withinDays: 14,
    harms: ['fire-explosion'],
    references: ['33 CFR 183 subpart I (electrical systems)', 'ISO 13297 (electrical systems)'],
    photos: [{ scene: 'battery-single', caption: 'Starting battery beside the tank' }],
    state: 'draft',
  },
  {
    key: 'pp-extinguisher',
    system: 'fire-safety',
    position: { along: 0.5, height: 0.95, side: 'starboard' },
    title: 'Only extinguisher is past twelve years from manufacture',
    observed:
      'One non-rechargeable extinguisher is carried at the helm. The year stamped on its bottom is 2012. Its gauge still reads in the green.',
    consequence: 'It may not discharge and no longer counts towards what must be carried.',
    recommendation:
      'Replace it with one of the class and number the rules ask for on a boat of this length, and mount it clear of the engine hatch.',
    urgency: 'within-days',
    withinDays: 14,
    harms: ['fire-explosion', 'unlawful'],
    references: ['33 CFR 175 subpart E (fire protection equipment)'],
    photos: [{ scene: 'extinguisher-stamp', caption: 'Year stamped on the bottom of the extinguisher' }],
    state: 'draft',
  },
  {
    key: 'pp-drive-propeller',
    system: 'shaft-propeller',
    position: { along: 1, height: 0, side: 'centre' },
    title: 'Propeller blade bent at the tip',
    observed:
      'One of three blades of the aluminium propeller is bent 14 mm aft at its tip. No fishing line is seen behind the hub. The shaft runs true within 0.1 mm.',
    consequence: 'Vibration will wear the drive’s bearings and seals.',
    recommendation: 'Repair or replace the propeller and try the boat for vibration afterwards.',
    urgency: 'next-layup',
    harms: ['deterioration'],
    references: [],
    photos: [{ scene: 'drive-propeller', caption: 'Stern-drive propeller, bent blade at top' }],
    state: 'draft',
  },
];
