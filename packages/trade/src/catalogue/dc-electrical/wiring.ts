import { entries } from '../entry.ts';

export const dcWiringEntries = entries(
  {
    key: 'dc-wiring-unsupported',
    system: 'dc-electrical',
    title: 'Wiring unsupported, unlabelled or jumbled',
    lookFor:
      'Look behind the panel, in the engine space and under the cockpit. Cables should lie in runs clipped at short intervals, protected at edges, high and dry, led straight and marked at both ends, with a diagram aboard. Note loose loops hanging on their terminals, cables lying in bilge water or on the exhaust, and dead tails left live. A neat bundle of one age is different from layers by many hands.',
    observed:
      'The wiring {location} is unsupported and unmarked, and runs in a tangle {extent}. The purpose of {count} conductors could not be told.',
    consequence:
      'Cables that hang work-harden, chafe through and pull out of their terminals. A fault in a tangle is found late and repaired wrongly, and a chafed positive starts a fire.',
    recommendation:
      'Have a competent marine electrician sort the wiring into clipped runs, remove what is dead, protect it at edges, label both ends and draw the circuit. Inspect each circuit’s protection at the same time.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before use where insulation is worn to the metal, or cables touch hot or moving parts.',
    lower: 'At the next lay-up where only labels are missing.',
    harms: ['fire-explosion', 'loss-of-control'],
    references: ['ISO 13297', 'ISO 10133', 'ABYC E-11', '33 CFR 183 subpart I'],
    worksheets: ['dc-voltage-drop', 'conductor-ampacity'],
    cautions: [
      'Isolate the batteries before hands go in behind a panel, and take rings and watches off. Mains may run in the same bundle.',
      'Do not tug a cable to find its other end.',
    ],
    related: [
      'dc-terminals-exposed',
      'dc-overcurrent-missing',
      'dc-connections-poor',
      'ac-domestic-fittings',
      'bilge-pump-wiring-poor',
      'access-machinery-unreachable',
    ],
    diagram: 'wiring-supported',
    alsoCalled: ['spaghetti', 'loom', 'harness', 'bird’s nest', 'wire labels', 'cable clips'],
  },
  {
    key: 'dc-conductors-too-small',
    system: 'dc-electrical',
    title: 'Conductors too small for their load or too long',
    lookFor:
      'Load the circuit and measure the voltage at the supply and at the load. Compare the drop with what is allowed for that kind of circuit. Feel cables and terminals for warmth. A low voltage at the consumer alone may be a bad joint: measure along the run to tell one from the other.',
    observed:
      'Under load the circuit of {item} lost {reading} between supply and consumer. Its conductors are {size}.',
    consequence:
      'The consumer works poorly and the cable heats where it is bundled. A pump or light fails when it is most needed, and insulation may burn.',
    recommendation:
      'Have an electrician renew the run in tinned stranded marine cable of the size found by the worksheet, with protection to suit, or shorten it.',
    urgency: 'next-layup',
    raise:
      'Within 30 days when the cable is warm to the touch, the fuse is larger than the cable allows, or a navigation light or bilge pump is starved.',
    harms: ['fire-explosion', 'loss-of-control'],
    references: ['ISO 13297', 'ISO 10133', 'ABYC E-11', '33 CFR 183.425'],
    worksheets: ['dc-voltage-drop', 'conductor-ampacity'],
    cautions: [
      'Mind windings and pump shafts while circuits are loaded. Do not bridge a fuse to keep a test going.',
    ],
    related: ['dc-overcurrent-missing', 'dc-connections-poor'],
    alsoCalled: ['voltage drop', 'undersized wire', 'thin cable', 'AWG'],
  },
  {
    key: 'dc-connections-poor',
    system: 'dc-electrical',
    title: 'Twisted, taped or domestic connections',
    lookFor:
      'Look for wires twisted and taped, screw-connector blocks for houses, insulation-piercing taps, unsoldered bare strands and solid copper cable. Pull each gently: a good crimp holds. Green or black copper wicks back under the insulation. Sound crimps with adhesive sleeve are what to look for.',
    observed: 'Connections {location}, {count} of them, are twisted and taped or of a household kind.',
    consequence:
      'Vibration loosens them and damp corrodes them: resistance rises, they heat, and the circuit fails or burns.',
    recommendation:
      'Have them remade with tinned terminals crimped by the right tool, sealed where damp, and supported within a short distance.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before use where a joint has melted, or feeds the bilge pump, steering or navigation lights.',
    harms: ['fire-explosion', 'loss-of-control'],
    references: ['ISO 13297', 'ISO 10133', 'ABYC E-11'],
    worksheets: ['dc-voltage-drop'],
    cautions: ['Isolate first; a loose strand of a positive arcs on the engine or the next terminal.'],
    related: ['dc-spring-clamps', 'dc-wiring-unsupported'],
    alsoCalled: ['chocolate block', 'scotch lock', 'wire nut', 'solid core wire', 'electrical tape'],
  },
  {
    key: 'dc-ignition-unprotected',
    system: 'dc-electrical',
    title: 'Spark-making equipment in a petrol or gas space',
    lookFor:
      'In spaces that hold a petrol engine, petrol tank or gas bottle look at every motor, switch, relay, isolator, charger and starter for its marking of ignition protection. No marking means ask the maker. Look for automotive spares: alternators, starters and pumps that fit but are not protected.',
    observed: 'Equipment without ignition protection, {item}, was found {location}.',
    consequence:
      'A brush or contact that sparks in vapour is the match. The marine part differs from the road part precisely there.',
    recommendation:
      'Do not energise it until the space is aired and free of vapour. Renew it with ignition-protected equipment or move it out of the space, by a competent marine electrician.',
    urgency: 'before-use',
    lower: 'Within 30 days when the equipment can be kept disconnected and the space holds no leak.',
    harms: ['fire-explosion'],
    references: ['ISO 8846', '33 CFR 183 subpart I', 'ABYC E-11', 'SAE J1171'],
    worksheets: [],
    cautions: [
      'Air the space and check for vapour before switching, and before the batteries are disconnected.',
    ],
    related: ['fuel-vapour-ventilation', 'engine-flame-arrester', 'gas-locker-not-vapour-tight'],
    alsoCalled: ['ignition protection', 'explosion-proof', 'automotive alternator', 'gasoline engine room'],
  },
);
