import { entries } from '../entry.ts';

export const accommodationFireEntries = entries(
  {
    key: 'fire-co-alarm-missing',
    system: 'fire-safety',
    title: 'No working carbon monoxide alarm',
    lookFor:
      'Look in every sleeping cabin and the saloon for an alarm made for boats, read its end-of-life date and press the test button. Ask what burns or runs near: cooker, heater, engine, generator, a neighbour’s exhaust, a solid-fuel stove. An alarm made for houses is not proved against a boat’s damp and motion.',
    observed: 'No working carbon monoxide alarm was found {location}.',
    consequence:
      'Carbon monoxide has no smell and kills in sleep. An exhaust leak, a stove in a closed cabin or a boat alongside can supply it.',
    recommendation:
      'Fit alarms made for boats, one in each sleeping cabin, placed as the maker says; renew by the date marked. Put right what makes the gas; an alarm is no substitute.',
    urgency: 'before-use',
    lower: 'Within 30 days when nobody sleeps aboard meanwhile and no fuel-burning appliance is used.',
    harms: ['poisoning'],
    references: ['EN 50291-2', 'UL 2034', 'ABYC A-24', 'ISO 12133'],
    worksheets: [],
    cautions: [
      'If an alarm sounds or heads ache: everyone into fresh air first, appliances off next, and a doctor for those affected.',
    ],
    related: ['exhaust-gas-leak', 'gas-heater-unflued', 'fire-heater-flue'],
    alsoCalled: ['CO detector', 'CO alarm', 'carbon monoxide detector'],
  },
  {
    key: 'fire-blanket-missing',
    system: 'fire-safety',
    title: 'No fire blanket within reach of the cooker',
    lookFor:
      'Look beside the cooker, not above it, for a fire blanket in its case, with its tapes hanging clear. See that its tapes pull free. Curtains and shelves by the burners count as fuel.',
    observed: 'No fire blanket can be reached from the cooker {location}.',
    consequence:
      'Burning fat spreads when an extinguisher or water is aimed at it. A blanket ends it in moments.',
    recommendation:
      'Fit a fire blanket where it can be reached without leaning over the flames, and move curtains away from the burners.',
    urgency: 'next-layup',
    raise: 'Within 30 days when the galley has no extinguisher either.',
    harms: ['fire-explosion', 'injury'],
    references: ['EN 1869', 'ISO 9094'],
    worksheets: [],
    cautions: ['Practise on a cold pan only. Never water on burning fat.'],
    related: ['fire-extinguishers-too-few', 'gas-appliance-no-flame-failure'],
    alsoCalled: ['galley fire', 'deep fat'],
  },
  {
    key: 'fire-smoke-alarm-missing',
    system: 'fire-safety',
    title: 'No working smoke alarm where people sleep',
    lookFor:
      'Look for an alarm in the sleeping cabins or the passage and one near the engine space where heat is watched, press the button and listen from each berth with the doors shut. Read the age. One placed above the cooker is soon taken down: note an empty base.',
    observed: 'No smoke alarm that sounds was found {location}.',
    consequence: 'A fire at night is then found by smoke, when the way out may already be closed.',
    recommendation:
      'Fit smoke alarms made for boats or caravans, where every sleeper will hear them, and press the button each month.',
    urgency: 'next-layup',
    raise: 'Within 30 days when people live aboard or the only exit leads past the galley or engine.',
    harms: ['fire-explosion', 'poisoning'],
    references: ['ISO 9094', 'NFPA 302'],
    worksheets: [],
    cautions: ['Test with the button or test aerosol, never with smoke from a flame.'],
    related: ['fire-co-alarm-missing', 'accommodation-escape-blocked'],
    alsoCalled: ['fire detector', 'smoke detector'],
  },
  {
    key: 'fire-heater-flue',
    system: 'fire-safety',
    title: 'Heater flue leaking or its lagging broken',
    lookFor:
      'Feel and look along the flue from appliance to skin, with it cold. Look for soot at joints, split lagging, rust-through in the deck gland, scorch on timber and wires, an intake near the exhaust, and sags that collect water. On a diesel-burning heater the exhaust is a thin steel tube hidden in lockers; on a solid-fuel stove the deck head and the hearth count.',
    observed:
      'The flue of the heater {location} leaks or lacks its lagging {extent} and passes close to {item}.',
    consequence:
      'A hot flue chars the wood about it, and one day lights it. A leaking one fills the cabin with carbon monoxide.',
    recommendation:
      'Do not use the heater until the flue is renewed or lagged, with the clearance its maker gives, by a competent heater engineer. Keep a carbon monoxide alarm in the cabin.',
    urgency: 'before-use',
    lower: 'Within 30 days when only the outer lagging is torn and nothing lies near it.',
    harms: ['fire-explosion', 'poisoning'],
    references: ['ISO 14895', 'ISO 9094'],
    worksheets: [],
    cautions: [
      'Flues stay hot long after shutting down. Old lagging may hold asbestos: do not break it open; have it sampled.',
    ],
    related: ['fire-co-alarm-missing', 'exhaust-gas-leak', 'accommodation-stove-clearance-poor'],
    alsoCalled: ['diesel heater', 'wood burner', 'chimney', 'warm-air heater'],
  },
);
