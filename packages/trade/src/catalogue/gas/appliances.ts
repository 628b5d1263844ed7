import { entries } from '../entry.ts';

export const gasApplianceEntries = entries(
  {
    key: 'gas-appliance-no-flame-failure',
    system: 'gas',
    title: 'Burner without a flame failure device',
    lookFor:
      'Look at each burner, oven and grill for the thermocouple tip beside the flame. With the boat aired, light the burner, let it warm, put the flame out with a damp cloth and listen: the valve should click shut within a minute or two (common practice, no source). A burner that stays lit only while the knob is held has a worn thermocouple, which is a nuisance but safe.',
    observed: 'The burners of {item} {location} have no working flame failure device; {count} were tried.',
    consequence: 'A flame blown or boiled out lets gas run on unburnt into the cabin.',
    recommendation:
      'Have a licensed gas fitter repair the devices or replace the appliance with one that has them on every burner. Until then do not leave a lit burner unattended and shut the bottle after each use.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use for a heater or refrigerator, which burns unattended, or when gas is smelt.',
    harms: ['fire-explosion'],
    references: ['ISO 10239', 'ABYC A-26'],
    worksheets: [],
    cautions: [
      'Try it with hatches open, one burner at a time, and shut the knob as soon as the answer is known.',
      'Not while refuelling nearby, and not with a gas detector sounding.',
    ],
    related: ['gas-detector-missing', 'gas-heater-unflued'],
    alsoCalled: ['flame supervision', 'thermocouple', 'flame-out', 'cooker', 'stove'],
  },
  {
    key: 'gas-heater-unflued',
    system: 'gas',
    title: 'Gas heater or water heater that takes its air from the cabin',
    lookFor:
      'Find the flue of each heater. A room-sealed appliance draws and discharges through its own concentric pipe and is closed to the cabin. Look for a geyser with an open draught hood, a portable cabinet heater, soot above the casing, and fixed vents taped over. Note the maker’s plate and whether the appliance was made for boats.',
    observed: 'The heater {location} burns with air from the living space and is not room-sealed.',
    consequence:
      'In a closed cabin the flame uses up the air and makes carbon monoxide, which has no smell. Sleepers do not wake.',
    recommendation:
      'Do not use it, and never while anyone sleeps aboard. Have a licensed gas fitter replace it with a room-sealed appliance or disconnect and cap it. Keep fixed vents open and fit a carbon monoxide alarm in each sleeping cabin.',
    urgency: 'before-use',
    lower:
      'Within 30 days where local rules permit the appliance, its flue draws and the ventilation was measured and found enough.',
    harms: ['poisoning', 'fire-explosion'],
    references: ['ISO 10239', 'ABYC A-26'],
    worksheets: [],
    cautions: [
      'Carry a carbon monoxide meter when an appliance is run for the survey, and stop at the first rise.',
      'Leave the space at once on headache or dizziness.',
    ],
    related: ['fire-co-alarm-missing', 'gas-appliance-no-flame-failure'],
    alsoCalled: ['geyser', 'instantaneous water heater', 'catalytic heater', 'open flue', 'CO'],
  },
  {
    key: 'gas-detector-missing',
    system: 'gas',
    title: 'Gas detector missing, dead or its sensor in the wrong place',
    lookFor:
      'Press the test button and see that lamp and sounder work. Find the sensor: for LPG it belongs low, near the appliance, but above the reach of bilge water. Read its date; sensor heads age. A detector under the deckhead is one for smoke or carbon monoxide and does nothing for LPG.',
    observed: 'The gas installation has no working gas detector {location}.',
    consequence:
      'A leak that sinks into the bilge is not smelt until it is dangerous. A detector gives the time to shut the bottle.',
    recommendation:
      'Fit a detector made for LPG on boats, its sensor low down near the cooker, with a remote shut-off at the bottle where possible. Renew sensors at the maker’s interval. It does not replace a sound installation and the leak-down test.',
    urgency: 'next-layup',
    raise: 'Within 30 days for a petrol-engined boat or where the bottle locker itself is doubtful.',
    harms: ['fire-explosion'],
    references: ['ABYC A-14', 'EN 50194-2'],
    worksheets: [],
    cautions: [
      'Use the maker’s test button or test gas. A lighter held to the sensor ruins it and is a naked flame.',
    ],
    related: [
      'gas-locker-not-vapour-tight',
      'fire-co-alarm-missing',
      'fuel-vapour-ventilation',
      'bilge-alarm-missing',
    ],
    alsoCalled: ['gas alarm', 'sniffer', 'propane detector', 'bilge alarm for gas'],
  },
);
