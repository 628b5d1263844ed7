import { entries } from '../entry.ts';

export const fuelTankEntries = entries(
  {
    key: 'fuel-tank-corroded',
    system: 'fuel',
    title: 'Fuel tank corroded or weeping',
    lookFor:
      'Wipe the seams, the bottom corners and beneath the straps, and look again after an hour. Aluminium pits under wet foam, felt and straps; steel rusts through from the top where water stands, and from the bottom inside where water lies under the fuel. A stain below the filler or sender is more often a loose joint than the tank. Say how much of the tank could be seen.',
    observed:
      'The {material} fuel tank {location} is corroded {extent}. Fuel or its stain was found at {item}.',
    consequence: 'A weep becomes a leak in a seaway. Fuel in the bilge feeds a fire and is pumped overboard.',
    recommendation:
      'Have the tank emptied, taken out or opened, and pressure-tested by a competent yard. Renew it if it is pitted; patches of resin over pits are no repair. Support the new tank so that water drains from under it.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use for any leak of petrol, or for diesel that drips.',
    lower: 'At the next lay-up for surface corrosion of a tank that is dry and tested tight.',
    harms: ['fire-explosion', 'pollution'],
    references: ['ISO 21487', 'ISO 10088', '33 CFR 183 subpart J', 'ABYC H-24', 'ABYC H-33'],
    worksheets: ['plate-thickness'],
    cautions: [
      'Petrol: no lamp, tool, switch or instrument that can spark. Air the space and check for vapour first.',
      'Do not probe a pit hard: it may be all there is.',
      'Never weld or heat a tank that has held fuel, unless it has been made gas-free and certified so.',
    ],
    related: [
      'fuel-tank-unsecured',
      'fuel-contaminated',
      'fuel-fill-hose',
      'access-tank-no-inspection',
      'bilge-oil-present',
    ],
    alsoCalled: ['diesel tank', 'gas tank', 'gasoline tank', 'pitting'],
  },
  {
    key: 'fuel-tank-unsecured',
    system: 'fuel',
    title: 'Fuel tank not held, or chafing on its bearers',
    lookFor:
      'Push against the tank, with an eye on its pipes. Look for straps that are slack, bearers that end under the bottom plate, screws that pass through the flange only and bright wear marks. Padding that soaks up water on an aluminium tank is a fault by itself.',
    observed: 'The fuel tank {location} can be moved {size} by hand; it is held by {item} only.',
    consequence:
      'A full tank is heavy and works in a seaway. It wears through at its supports or breaks its pipes and hoses.',
    recommendation:
      'Fasten it against movement in every direction, with non-absorbent strips between tank and supports, and examine the worn places for loss of thickness.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when pipes are being strained, or the tank holds petrol.',
    harms: ['fire-explosion', 'pollution', 'injury'],
    references: ['ISO 21487', '33 CFR 183 subpart J', 'ABYC H-24', 'ABYC H-33'],
    worksheets: [],
    cautions: ['Move the tank no more than is needed to see that it moves: old pipe joints can open.'],
    related: ['fuel-tank-corroded', 'fuel-hose-perished'],
    alsoCalled: ['tank hold-down', 'tank straps'],
  },
  {
    key: 'fuel-fill-hose',
    system: 'fuel',
    title: 'Filling hose leaking, or spilt fuel can run into the boat',
    lookFor:
      'Look under the deck filler with a mirror: hose cracked or soft, single or rusted clips, hose not made for fuel, drip marks on the tank top. Check the cap’s seal. See where a spill on deck would go, and that filler and vent stand well clear of openings. Where petrol is filled into metal fittings, look for the earth connection from deck filler to tank and measure it with a meter.',
    observed: 'The filling hose {location} is perished {extent} and leaks at {item}.',
    consequence:
      'The hose is wet only while filling, so a leak shows just when there is most fuel. With petrol, a filler that is not earthed can spark from static electricity.',
    recommendation:
      'Renew the hose with fuel filling hose of the kind the rules require, double-clipped where the spigots allow, and the cap’s seal. Restore the earth connection. Watch the first filling from inside with the space open and aired.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before the next filling when the hose is split, or with petrol whatever its size.',
    harms: ['fire-explosion', 'pollution'],
    references: ['ISO 10088', 'ISO 7840', '33 CFR 183 subpart J', 'ABYC H-24', 'ABYC H-33'],
    worksheets: [],
    cautions: ['No continuity test of the earth wire while fuel or vapour is about: a meter can spark.'],
    related: ['fuel-vent-astray', 'fuel-hose-perished', 'fuel-tank-corroded'],
    diagram: 'fuel-fill-and-vent',
    alsoCalled: ['filler hose', 'deck fill', 'bonding of the filler', 'static earth'],
  },
  {
    key: 'fuel-vent-astray',
    system: 'fuel',
    title: 'Tank vent ends inside, low, or without a flame screen',
    lookFor:
      'Trace the vent hose from tank top to outlet. It should rise all the way, without a loop that can hold fuel, and end outside, high enough not to take in water when heeled or pressed, away from openings and from the exhaust. Petrol vents carry a fine screen. Insect nests and paint block the small ones.',
    observed:
      'The vent of the fuel tank {location} ends at {item}, where it can let fuel or vapour into the boat.',
    consequence:
      'A vent inside or near an opening lets vapour and overflow into the boat. A low one lets sea water into the tank, and a blocked one starves the engine or bursts the tank when it is filled.',
    recommendation:
      'Lead the vent upward to a suitable outlet outside, clear of openings, with a flame screen where petrol is carried. Clean or renew a blocked one.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use for a petrol tank that vents into the boat.',
    harms: ['fire-explosion', 'pollution'],
    references: ['ISO 10088', '33 CFR 183 subpart J', 'ABYC H-24', 'ABYC H-33'],
    worksheets: ['natural-ventilation'],
    cautions: ['Do not blow through a vent by mouth: fuel and its vapour are poisonous.'],
    related: ['fuel-fill-hose', 'fuel-contaminated', 'fuel-vapour-ventilation'],
    diagram: 'fuel-fill-and-vent',
    alsoCalled: ['breather', 'flame arrester on the vent', 'flash screen'],
  },
  {
    key: 'fuel-contaminated',
    system: 'fuel',
    title: 'Water, sludge or growth in the fuel',
    lookFor:
      'Draw a sample into a clear jar from the bottom of the tank or from the filter bowl and let it stand. Water lies beneath; dark threads or slime between the two is microbial growth. Ask when the tank was last opened. A little water in the bowl after a damp lay-up is not yet contamination.',
    observed:
      'A sample of fuel drawn from {item} showed water and dirt, {size} deep in the jar after standing.',
    consequence:
      'In rough water the sediment is stirred up and stops the engine when it is most needed. Water corrodes tank and injection gear.',
    recommendation:
      'Drain the water, have the fuel filtered and the tank cleaned, treat growth, renew the filters and carry spares. Find where the water comes from: cap seal, vent or condensation.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the filter is blocked or the engine has stopped from it.',
    lower: 'At the next lay-up for traces only.',
    harms: ['loss-of-control', 'deterioration'],
    references: [],
    worksheets: [],
    cautions: [
      'Catch every drop; fuel in the bilge must not be pumped out.',
      'Sample petrol only in the open air, without sparks, in a container that is earthed or made for petrol.',
    ],
    related: ['fuel-filter-bowl', 'fuel-vent-astray', 'fuel-tank-corroded'],
    alsoCalled: ['diesel bug', 'algae', 'dirty fuel', 'water in fuel'],
  },
);
