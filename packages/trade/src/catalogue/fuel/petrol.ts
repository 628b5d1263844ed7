import { entries } from '../entry.ts';

export const petrolEntries = entries(
  {
    key: 'fuel-vapour-ventilation',
    system: 'fuel',
    title: 'Petrol engine space blower dead or its ventilation inadequate',
    lookFor:
      'Run the blower and feel for the flow outside. Follow its duct by hand to the intake: low in the space, above bilge water, in one piece. Crushed, fallen or torn ducting is the usual fault, and a blower that runs with the hose off its spigot moves air from nowhere useful. Open vents count separately and need an intake and an exhaust. Find the warning label at the starting position.',
    observed:
      'The ventilation of the petrol engine space is deficient: {item} {location} does not work or has come adrift.',
    consequence: 'Petrol vapour collects low in the engine space, and the next start can explode it.',
    recommendation:
      'Do not start the engine until the space has been opened, aired and checked for vapour. Renew blower and duct, lead the intake low and clear of water, open the natural ventilation and fit the warning label. Run the blower for at least four minutes before each start and check for fumes.',
    urgency: 'before-use',
    lower:
      'Within 30 days when the airflow was measured and found enough and only the label or a duct’s clip is missing.',
    harms: ['fire-explosion'],
    references: ['33 CFR 183.610', '33 CFR 183.620', 'ISO 11105', 'ABYC H-2'],
    worksheets: ['petrol-ventilation', 'natural-ventilation'],
    cautions: [
      'Open and check for vapour before any switch is worked; a faulty blower motor is itself a spark.',
      'Keep fingers, clothes and loose hose from the impeller.',
    ],
    related: ['dc-ignition-unprotected', 'engine-flame-arrester', 'fuel-hose-perished'],
    alsoCalled: ['bilge blower', 'gasoline fumes', 'extractor fan'],
  },
  {
    key: 'fuel-petrol-stored-below',
    system: 'fuel',
    title: 'Petrol can or outboard’s tank stowed below',
    lookFor:
      'Search lockers, lazarette and the engine space for cans, dinghy tanks, generators with fuel in them and small outboards laid down. Petrol belongs on deck or in a locker that drains overboard and is vented, tight to the interior. An empty can is full of vapour.',
    observed:
      'Petrol, {count} containers in all, was stowed {location} in a space open to the inside of the boat.',
    consequence:
      'Cans breathe with the day’s warmth and leak as they age. The vapour is heavier than air and lies in the bilge.',
    recommendation:
      'Take the petrol off the boat, or stow it in the open air or a tight locker draining overboard, in containers made for it and secured.',
    urgency: 'before-use',
    harms: ['fire-explosion'],
    references: ['ISO 9094'],
    worksheets: [],
    cautions: [
      'Air the boat before switching anything. Do not carry cans past a lit stove or a running engine.',
    ],
    related: ['fuel-vapour-ventilation', 'gas-bottle-unsecured', 'fire-extinguishers-too-few'],
    alsoCalled: ['jerry can', 'dinghy fuel', 'gasoline storage', 'portable generator'],
  },
);
