import { entries } from '../entry.ts';
import { mains, nobodyInTheWater } from './cautions.ts';

export const acAboardEntries = entries(
  {
    key: 'ac-earth-neutral-joined',
    system: 'ac-electrical',
    title: 'Neutral and earth joined aboard while on shore power',
    lookFor:
      'With everything unplugged and dead, measure between neutral and earth at the inlet: they should be apart. They are joined only at a source: the generator, the inverter while it inverts, the secondary of an isolation transformer. A household appliance or cooker may hold a join inside. A plug-in tester cannot show neutral and earth swapped.',
    observed:
      'Neutral and earth are joined aboard at {item} {location} with the boat set to shore power; the meter read {reading}.',
    consequence:
      'Part of the return current flows in the earth wire, and from the boat’s metal through the water. It endangers swimmers, defeats residual-current protection and trips the marina’s.',
    recommendation:
      'Disconnect shore power. Have a qualified electrician find and part the join, see that each source makes its own, and measure the leakage current.',
    urgency: 'before-use',
    harms: ['shock', 'deterioration'],
    references: ['ISO 13297', 'ABYC E-11', 'IEC 60364-7-709'],
    worksheets: ['insulation-resistance'],
    cautions: [mains, nobodyInTheWater],
    related: ['ac-rcd-missing', 'ac-inverter-changeover', 'corrosion-stray-current'],
    alsoCalled: ['neutral ground bond', 'electric shock drowning', 'leakage current', 'bonded neutral'],
  },
  {
    key: 'ac-reverse-polarity',
    system: 'ac-electrical',
    title: 'Live and neutral reversed and nothing to show it',
    lookFor:
      'Note how the boat’s breakers are made: a single-pole breaker in the live only protects while polarity is right. Look for an indicator near the inlet breaker and see that it answers its test button. Reversal may lie in the lead, an adapter, the pontoon post or a socket aboard. In countries with reversible plugs both conductors are switched and the question does not arise in this form.',
    observed:
      'Polarity was found reversed at {item} {location}, and the boat has no working indicator of reversed polarity.',
    consequence:
      'Switches and single-pole breakers open the wrong conductor, so that what is switched off remains live.',
    recommendation:
      'Do not use shore power through that connection. Have a qualified electrician find the reversal, fit double-pole breaking and an indicator where the system calls for them.',
    urgency: 'before-use',
    lower:
      'Within 90 days when polarity is right, all breakers break both conductors and only the indicator is lacking.',
    harms: ['shock', 'fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11'],
    worksheets: [],
    cautions: [mains],
    related: ['ac-shore-leads-improvised', 'ac-domestic-fittings'],
    alsoCalled: ['hot and neutral swapped', 'polarity light', 'line and neutral'],
  },
  {
    key: 'ac-inverter-changeover',
    system: 'ac-electrical',
    title: 'Two mains sources can be on together',
    lookFor:
      'List the sources: shore inlets, generator, inverter. Follow how each reaches the panel and try the changeover: it should be impossible to connect two. Loose sockets fed from an inverter by a plug put into the panel are the commonest makeshift. Look also at how the inverter is fixed, ventilated and fused, and whether its sockets are marked.',
    observed: 'Two sources of mains power, {item}, can be connected to the same circuit at once {location}.',
    consequence:
      'Sources in conflict destroy one another and can start a fire. The bare pins of a lead left in the inlet may become live.',
    recommendation:
      'Have a qualified electrician fit an interlocked changeover switch and make the neutral arrangement of each source right. Use one source alone until then.',
    urgency: 'before-use',
    lower: 'Within 30 days when one source is disconnected and tagged.',
    harms: ['shock', 'fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11', 'ABYC A-31'],
    worksheets: ['conductor-ampacity'],
    cautions: [mains, 'An inverter holds a charge after it is switched off: wait as its maker says.'],
    related: ['ac-earth-neutral-joined', 'ac-shore-inlet-burnt', 'dc-overcurrent-missing'],
    alsoCalled: ['transfer switch', 'interlock', 'back-feed', 'generator'],
  },
  {
    key: 'ac-domestic-fittings',
    system: 'ac-electrical',
    title: 'Household cable and fittings in the mains installation',
    lookFor:
      'Look for solid-core house cable, open terminal blocks, metal boxes that rust, sockets loose in the joinery or near water, and mains mixed with battery wiring in one bundle or behind one open panel. Mains terminals want their own cover that needs a tool. Flexible stranded cable, well supported, is right.',
    observed: 'The mains installation {location} has household cable and open fittings at {item}.',
    consequence:
      'Solid cores break with vibration and loosen in their screws, then heat. Someone reaching for a battery circuit touches mains.',
    recommendation:
      'Isolate that circuit and have a qualified electrician renew it in stranded marine cable, with boxes, covers and residual-current protection, apart from the battery wiring. Have an insulation and earth test made.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when a live part can be touched without a tool, or anything has overheated.',
    harms: ['shock', 'fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11', 'UL 1426'],
    worksheets: ['insulation-resistance', 'conductor-ampacity'],
    cautions: [
      mains,
      'Disconnect electronics and protective devices before an insulation test: its voltage damages them.',
    ],
    related: ['dc-wiring-unsupported', 'dc-terminals-exposed', 'ac-rcd-missing'],
    alsoCalled: ['Romex', 'twin and earth', 'solid core', 'house wiring', 'junction box'],
  },
  {
    key: 'ac-insulation-low',
    system: 'ac-electrical',
    title: 'Low insulation resistance or leakage to earth',
    lookFor:
      'Made by a qualified electrician with electronics disconnected: each circuit from live and neutral together to earth with an insulation tester. Then, reconnected, by a leakage clamp round the whole shore lead. Water-heater elements, battery chargers and flooded deck inlets are the usual paths. A low reading of the whole boat with sound single circuits points to appliances, not wiring.',
    observed: 'The insulation resistance of {item} {location} was measured as {reading}.',
    consequence:
      'Current leaks through damp insulation into the earth, or into the water round the boat. It trips protection where there is some and shocks where there is none.',
    recommendation:
      'Leave the circuit disconnected. Have a qualified electrician trace the path, renew the element or cable and repeat the test.',
    urgency: 'before-use',
    lower: 'Within 30 days when the figure is low but above the limit and its circuit stays disconnected.',
    harms: ['shock', 'fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11', 'IEC 60364-7-709'],
    worksheets: ['insulation-resistance'],
    cautions: [
      mains,
      'The tester itself gives a shock and charges long cables: discharge them before touching.',
    ],
    related: ['ac-rcd-missing', 'ac-earth-neutral-joined'],
    alsoCalled: ['megger', 'insulation test', 'earth leakage', 'immersion heater element'],
  },
);
