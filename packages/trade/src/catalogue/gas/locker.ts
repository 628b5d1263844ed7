import { entries } from '../entry.ts';

export const gasLockerEntries = entries(
  {
    key: 'gas-locker-not-vapour-tight',
    system: 'gas',
    title: 'Gas bottle not in a vapour-tight locker that drains overboard',
    lookFor:
      'Find every bottle aboard, spares and cartridges included. A proper locker opens only to the open air, from the top, with a lid seal; it is tight to the rest of the boat and drains from its bottom straight overboard above the waterline. Look at the low half for cable, hose and fastening holes, split taping at the joints and a bottom that is only a loose board. A bottle lashed on an open deck clear of hatches and drains is a different arrangement and may be acceptable.',
    observed:
      'A gas bottle stands {location} in a space that is open to the inside of the boat and has no drain of its own overboard. Its opening into the boat is at {item}.',
    consequence:
      'LPG is heavier than air. What leaks at the bottle, regulator or joints runs down into the boat and lies in the bilge unseen, where a spark or a burner can explode it.',
    recommendation:
      'Shut the bottle valve and take the bottle off the boat until this is put right. Provide a vapour-tight locker opening only to the open air, with its own drain overboard, or move the bottles to a suitable place on deck. Have the installation tested by a licensed gas fitter, to the rules in force where the boat is kept, before gas is used again.',
    urgency: 'before-use',
    lower:
      'When the bottles have been taken ashore and the system is disconnected and tagged, it can wait for the refit.',
    harms: ['fire-explosion'],
    references: ['ISO 10239', 'ABYC A-1'],
    worksheets: ['gas-locker', 'gas-leak-down'],
    cautions: [
      'If gas is smelt or a detector sounds: no switches, no flames, shut the bottle if it can be reached, air the boat and leave it.',
      'Test for vapour-tightness with smoke or water, never with gas.',
    ],
    related: [
      'gas-locker-drain-shared',
      'gas-locker-drain-blocked',
      'gas-pressure-gauge-missing',
      'gas-detector-missing',
    ],
    diagram: 'gas-locker-drain-overboard',
    alsoCalled: [
      'propane locker',
      'LPG locker',
      'bottle locker',
      'cylinder',
      'butane',
      'self-draining locker',
    ],
  },
  {
    key: 'gas-locker-drain-shared',
    system: 'gas',
    title: 'Gas locker drain shared or teed',
    lookFor:
      'Follow the drain by hand from the bottom of the gas locker to the skin. It must go alone, always downhill, to an outlet of its own. Look for a tee, a common outlet with a cockpit, sink or bilge pump hose, and for a drain that simply ends in another locker. A second hose that runs alongside to a neighbouring outlet is not a fault so long as nothing joins.',
    observed:
      'The drain of the gas locker is joined {location} to {item} and goes overboard through the same outlet.',
    consequence:
      'Gas takes the easiest way down. Through the tee it can pass back into the cockpit, the bilge or the cabin, and the other hose can fill the shared part with water so that nothing drains at all.',
    recommendation:
      'Shut the bottle valve and do not use gas until it is altered. Lead the locker drain by itself, falling all the way, to its own outlet above the waterline, well away from openings into the boat. Blank the tee that is left. A licensed gas fitter should pass the finished work.',
    urgency: 'before-use',
    lower:
      'Within 30 days when the shared pipe meets only at the outlet, outside any space that can hold gas.',
    harms: ['fire-explosion'],
    references: ['ISO 10239', 'ABYC A-1'],
    worksheets: ['gas-locker'],
    cautions: [
      'Shut the bottle and air the locker before looking into it; keep lamps and telephones that are not intrinsically safe out of it.',
      'Prove the drain with water, not by letting gas out.',
    ],
    related: ['gas-locker-drain-blocked', 'gas-locker-not-vapour-tight', 'deck-cockpit-drains-poor'],
    diagram: 'gas-locker-drain-shared',
    alsoCalled: ['common drain', 'T-piece', 'propane locker vent'],
  },
  {
    key: 'gas-locker-drain-blocked',
    system: 'gas',
    title: 'Gas locker drain blocked, too small, or its outlet under water',
    lookFor:
      'Pour a bucket of clean water into the locker and watch it leave. Measure the bore at its narrowest fitting, not the hose. See that the hose has no sag that holds water and that the outlet stays clear of the water at rest, loaded and heeled. Rope, leaves, wasp nests and the bottle itself standing on the hole are the usual stoppers.',
    observed:
      'Water poured into the gas locker did not drain away freely. The drain {location} has a bore of {size}; the cause found was {item}.',
    consequence:
      'Leaking gas fills the locker to the lid and then finds its way into the boat. A trap of water in the hose stops gas just as well as a plug.',
    recommendation:
      'Clear the drain and prove it with water before gas is used. Remove sags, renew a drain of too small a bore, and raise an outlet that lies near the waterline. Fit a grating that keeps the bottle and loose gear off the hole.',
    urgency: 'before-use',
    lower:
      'Within 30 days when it drains, though slowly, and only the bore or the height of the outlet is short.',
    harms: ['fire-explosion'],
    references: ['ISO 10239', 'ABYC A-1'],
    worksheets: ['gas-locker'],
    cautions: [
      'Shut the bottle first. Gas may already be lying in a locker that cannot drain: air it before leaning in.',
    ],
    related: ['gas-locker-drain-shared', 'gas-locker-not-vapour-tight'],
    alsoCalled: ['clogged propane locker drain', 'drain outlet below waterline'],
  },
  {
    key: 'gas-bottle-unsecured',
    system: 'gas',
    title: 'Gas bottles loose, lying down, or stowed below',
    lookFor:
      'Push each bottle. It should stand upright on its foot and not shift in any direction, with the valve protected and a plug or cap on a spare. Search lockers and the lazarette for spares, camping cartridges and disposable cylinders: they count as bottles, even when said to be empty.',
    observed:
      'Gas containers, {count} in number, were found {location}, not secured upright in a gas locker.',
    consequence:
      'A bottle that falls strains the hose and regulator. Lying down it can send liquid gas to the regulator and burners. A spare below can leak into the cabin whatever the locker is like.',
    recommendation:
      'Strap working bottles upright in the gas locker. Stow spares and cartridges in the locker as well, or take them ashore.',
    urgency: 'before-use',
    lower: 'Within 30 days for a bottle that is in a sound locker and upright but only lacks its strap.',
    harms: ['fire-explosion', 'injury'],
    references: ['ISO 10239', 'ABYC A-1'],
    worksheets: ['gas-locker'],
    cautions: [
      'Rusted cartridges can vent when handled: move them in the open air, away from flames and running engines.',
    ],
    related: ['gas-locker-not-vapour-tight', 'gas-regulator-corroded'],
    alsoCalled: ['spare cylinder', 'camping gas cartridge', 'propane canister'],
  },
);
