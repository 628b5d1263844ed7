import { entries } from '../entry.ts';

export const dcBatteryEntries = entries(
  {
    key: 'dc-terminals-exposed',
    system: 'dc-electrical',
    title: 'Loose or exposed live terminals',
    lookFor:
      'With the supply off, try each terminal by hand. Look for uncovered posts of batteries, alternator, starter, isolator and bus bars, above all where a tool or stowed gear could bridge them. Discoloured insulation, melted plastic and green growth tell of heat. Negative posts on a bonded bar need no cover against shock but can still be bridged.',
    observed: 'Live terminals {location}, {count} of them, are loose or uncovered.',
    consequence:
      'A tool or chain laid across them shorts the battery, which can melt metal and start a fire. A loose terminal arcs and heats by itself.',
    recommendation:
      'Tighten or remake the connections, renew heated parts, and cover every live terminal with a boot, lid or shroud that stays in place. A competent marine electrician should check the heated ones.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when a terminal is hot, melted or where gear is stowed against it.',
    harms: ['fire-explosion', 'injury'],
    references: ['ISO 13297', 'ISO 10133', 'ABYC E-10', 'ABYC E-11', '33 CFR 183 subpart I'],
    worksheets: [],
    cautions: [
      'Rings, watches and spanners off or insulated: a battery will weld them.',
      'Mains terminals must be dead and locked off before covers come off.',
    ],
    related: ['dc-battery-unsecured', 'dc-spring-clamps', 'ac-domestic-fittings'],
    diagram: 'battery-terminals-covered',
    alsoCalled: ['uncovered battery posts', 'terminal boots', 'bare lugs'],
  },
  {
    key: 'dc-spring-clamps',
    system: 'dc-electrical',
    title: 'Spring clamps used as a permanent connection',
    lookFor:
      'Look at the batteries for crocodile clips, jump-lead clamps and charger clips left on and wired in. A bolted lug or tapered post clamp of the right size is the permanent kind. Clips of a charger that is put on and taken away after use are no fault.',
    observed: 'The circuit of {item} is connected to the battery {location} by spring clamps.',
    consequence:
      'A spring clamp touches at a few points, corrodes and shakes off. It arcs beside a battery that gives off explosive gas, and it usually bypasses the fuse and the isolator.',
    recommendation:
      'Remove the clamps. Connect the circuit with crimped lugs, bolted, through a fuse near the battery and behind the isolator unless it must stay live.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use on a bilge pump or an engine start circuit, or in a petrol-engined boat.',
    harms: ['fire-explosion', 'loss-of-control'],
    references: ['ABYC E-11', 'ABYC E-10', '33 CFR 183 subpart I', 'ISO 13297'],
    worksheets: [],
    cautions: ['Switch the load off before lifting a clamp: the last spark is beside the battery’s vent.'],
    related: ['dc-terminals-exposed', 'dc-overcurrent-missing', 'dc-connections-poor'],
    diagram: 'battery-terminal-kind',
    alsoCalled: ['alligator clips', 'crocodile clips', 'jump leads'],
  },
  {
    key: 'dc-battery-unsecured',
    system: 'dc-electrical',
    title: 'Batteries able to shift or tip',
    lookFor:
      'Push each battery hard in each direction and upwards. It should hardly move (no more than about 25 mm; common practice, no source) and stay put when the boat is knocked down. Look for an elastic strap, a box screwed to nothing, and a wet battery without a tray that takes acid.',
    observed: 'The battery {location} moves {size} when pushed and is held by {item} only.',
    consequence:
      'A battery that shifts breaks its leads or shorts on what it touches, and a tipped wet one spills acid.',
    recommendation:
      'Bolt or strap it to structure, in an acid-resistant tray where wet, so that it cannot move in any direction, capsize included.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use in a boat that goes offshore, or where it stands beside fuel tank or metal.',
    harms: ['fire-explosion', 'injury'],
    references: ['ISO 13297', 'ABYC E-10', '33 CFR 183 subpart I', 'ISO 10133'],
    worksheets: ['battery-ventilation'],
    cautions: ['Batteries are heavy and give off explosive gas: lift by handles, eyes protected, no sparks.'],
    related: ['dc-terminals-exposed', 'dc-battery-unventilated', 'accommodation-heavy-gear-unsecured'],
    diagram: 'battery-secured',
    alsoCalled: ['battery hold-down', 'battery box', 'strap'],
  },
  {
    key: 'dc-battery-unventilated',
    system: 'dc-electrical',
    title: 'Battery space without ventilation at the top',
    lookFor:
      'Find how the gas leaves: high vent to the open air, with an inlet low. A closed bunk locker, taped vents and a charger set for another kind of battery are the usual findings. Sealed batteries gas too when overcharged. Feel whether a case is bulged or hot, and look for crusted terminals and an acid smell.',
    observed:
      'The batteries {location} stand in a closed space; its opening to the open air measures {size}.',
    consequence:
      'Charging batteries give off hydrogen, which gathers under the deckhead and explodes with a spark; a battery that overheats also gives off poisonous fumes.',
    recommendation:
      'Vent the space high to the open air by the worksheet’s figure, keep charging sources and sparks out of it, and check charger settings against the battery’s kind.',
    urgency: 'next-layup',
    raise: 'Within 30 days, or before charging when a battery is swollen, hot or smells.',
    harms: ['fire-explosion', 'poisoning', 'injury'],
    references: ['EN IEC 62485-2', 'ABYC E-10', 'ISO 13297', '33 CFR 183 subpart I'],
    worksheets: ['battery-ventilation'],
    cautions: [
      'No flame, smoking or clip lead near a charging battery. Leave a hot or swollen one alone and cut its charger from elsewhere.',
    ],
    related: ['dc-battery-unsecured', 'dc-lithium-unmanaged'],
    diagram: 'battery-box-vented',
    alsoCalled: ['hydrogen', 'gassing', 'battery box vent'],
  },
  {
    key: 'dc-lithium-unmanaged',
    system: 'dc-electrical',
    title: 'Lithium batteries without suitable management and charging',
    lookFor:
      'Read the kind and maker’s plate of each battery. Look for its management unit, the contactor it works, low-temperature charge protection, and chargers set for it; alternators must not be left without load when the unit disconnects. Ask for the installer’s papers and the insurer’s view. A plain lead-acid charger and a bare battery are the faults.',
    observed:
      'The lithium batteries {location} are charged by {item}, which is not set for them, and no working management unit was found. Papers of the installation were not aboard.',
    consequence:
      'Cells charged beyond their limits overheat, and a cell fire cannot be put out with hand extinguishers. A sudden disconnection can wreck the alternator and leave the boat without power.',
    recommendation:
      'Disconnect charging until a competent marine electrician with knowledge of this kind has verified management, charging, fusing and enclosure to the battery maker’s instructions. Tell the insurer.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use or charging when a battery is hot, swollen, home-built or damaged.',
    harms: ['fire-explosion', 'poisoning', 'loss-of-control'],
    references: ['ISO/TS 23625', 'ABYC E-13', 'ISO 13297'],
    worksheets: ['conductor-ampacity'],
    cautions: [
      'Never open, short or reset a battery. Smoke, hiss or heat: leave the boat, call the fire service.',
    ],
    related: ['dc-battery-unventilated', 'dc-overcurrent-missing'],
    alsoCalled: ['LiFePO4', 'Li-ion', 'BMS', 'thermal runaway'],
  },
);
