import { entries } from '../entry.ts';
import { mains, nobodyInTheWater } from './cautions.ts';

export const acShoreEntries = entries(
  {
    key: 'ac-shore-leads-improvised',
    system: 'ac-electrical',
    title: 'Improvised shore-power leads or adapters',
    lookFor:
      'Lay out the whole lead, both ends and every adapter in use. Look for household plugs and cable reels, joints taped or hung in the air, an adapter with a plug at both ends, a lead without earth, and one dipping in the water or trapped in a hatch. Feel for warmth after it has carried a load. An adapter made and marked for marinas, between two sound fittings, is acceptable.',
    observed: 'Shore power comes aboard {location} by an improvised lead or adapter: {item}.',
    consequence:
      'Wet or undersized joints heat and burn. A lost or swapped earth leaves the boat’s metal, and the water about it, at a dangerous voltage without any sign.',
    recommendation:
      'Unplug it and do not use it again. Use one unbroken shore lead of the right rating, with the weatherproof connectors meant for it. Have a qualified electrician test the boat’s inlet, earth and residual-current protection.',
    urgency: 'before-use',
    harms: ['shock', 'fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11', 'IEC 60309', 'IEC 60364-7-709', 'NFPA 303'],
    worksheets: ['insulation-resistance'],
    cautions: [mains, nobodyInTheWater],
    related: ['ac-shore-inlet-burnt', 'ac-rcd-missing', 'ac-earth-missing'],
    diagram: 'shore-power-lead',
    alsoCalled: [
      'shore cord',
      'extension lead',
      'pigtail adapter',
      'male to male',
      'dock power',
      'hook-up lead',
    ],
  },
  {
    key: 'ac-shore-inlet-burnt',
    system: 'ac-electrical',
    title: 'Shore-power inlet or plug burnt',
    lookFor:
      'Unplug at the pontoon, then look into the inlet and the lead’s socket for browned plastic, pitted or green pins, and softness; look behind the inlet for scorched wire and loose screws. One dark pin with a bright one beside it means heat at that pin. Plain salt bloom wipes off.',
    observed: 'The shore-power inlet {location} shows scorching at {item}, {extent}.',
    consequence:
      'A poor contact heats every time a heater or charger runs. Inlets are a known place for boats’ electrical fires to start.',
    recommendation:
      'Do not connect shore power. Have a qualified electrician renew inlet and lead connector together, since either will spoil the other, and cut the cable back to bright copper. Turn and lock the plug fully when connecting.',
    urgency: 'before-use',
    lower: 'Within 30 days for tarnished pins without any heating.',
    harms: ['fire-explosion', 'shock'],
    references: ['ISO 13297', 'ABYC E-11', 'IEC 60309'],
    worksheets: [],
    cautions: [mains],
    related: ['ac-shore-leads-improvised', 'ac-inverter-changeover'],
    alsoCalled: ['twist lock', 'shore power receptacle', 'burnt plug', 'pins'],
  },
  {
    key: 'ac-rcd-missing',
    system: 'ac-electrical',
    title: 'No residual-current protection on the shore supply',
    lookFor:
      'Find the main breaker by the inlet: it should break live and neutral together and carry a residual-current device near where the lead comes in. Read its rating, press the test button with the supply on and see it trip. The button tests the device alone; it does not prove that the earth is connected. Outlets in galley, head and on deck are looked at separately.',
    observed: 'The shore supply {location} has no residual-current device that trips when tested.',
    consequence:
      'A fault to metal or water is not cut off. Anyone who touches the boat, or swims near it, can be electrocuted.',
    recommendation:
      'Have a qualified electrician fit or renew the device and double-pole breaker, of the rating the rules call for, close to the inlet, and test it with an instrument. Press the button every month.',
    urgency: 'before-use',
    lower:
      'Within 30 days when the device is fitted but only untested, and the boat is not connected meanwhile.',
    harms: ['shock', 'fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11', 'IEC 60364-7-709'],
    worksheets: ['insulation-resistance'],
    cautions: [
      mains,
      nobodyInTheWater,
      'Pressing the test button cuts the supply: warn those working aboard.',
    ],
    related: ['ac-earth-missing', 'ac-earth-neutral-joined', 'ac-shore-leads-improvised'],
    alsoCalled: ['RCD', 'GFCI', 'ELCI', 'earth leakage breaker', 'ground fault'],
  },
  {
    key: 'ac-earth-missing',
    system: 'ac-electrical',
    title: 'Earth conductor broken or missing on the mains side',
    lookFor:
      'With shore power unplugged and the system dead, measure from the inlet’s earth pin to the earth of each outlet, to the cases of charger and water heater, and to the boat’s DC negative and bonding where the rules join them. Look for green wires cut off by someone who meant to save anodes. A galvanic isolator in the path misleads a plain ohmmeter: use its diode range.',
    observed:
      'No continuity was found between the earth pin of the shore inlet and {item} {location}; the meter read {reading}.',
    consequence:
      'A fault puts metal at mains voltage with nothing to trip the breaker. It waits for the first hand, or for a swimmer.',
    recommendation:
      'Disconnect shore power until a qualified electrician has restored the earth all the way and tested it. Where corrosion was the reason for cutting it, a galvanic isolator or an isolation transformer is the answer, not a missing earth.',
    urgency: 'before-use',
    harms: ['shock', 'fire-explosion'],
    references: ['ISO 13297', 'ABYC E-11', 'ABYC A-28'],
    worksheets: ['insulation-resistance'],
    cautions: [mains, nobodyInTheWater],
    related: ['ac-galvanic-isolator', 'corrosion-stray-current', 'ac-rcd-missing'],
    alsoCalled: ['safety ground', 'grounding conductor', 'green wire cut', 'PE'],
  },
  {
    key: 'ac-galvanic-isolator',
    system: 'ac-electrical',
    title: 'No galvanic isolator on a boat kept on shore power',
    lookFor:
      'Ask how long the lead stays plugged in. Look in the earth conductor just inside the inlet for an isolator or a transformer, and read its marks; an old one without indication of failure is doubtful. With the diode range of a meter an isolator, disconnected at both ends, reads its forward drop each way; zero says shorted and nothing at all says open. Wires that run round it defeat it.',
    observed:
      'The boat lies connected to shore power and has no working galvanic isolator in the earth conductor {location}.',
    consequence:
      'The earth wire joins the boat’s underwater metal to that of every neighbour and to the dock. The least noble metal is eaten first: often a stern drive, or the anodes.',
    recommendation:
      'Have a qualified electrician fit a fail-safe galvanic isolator or an isolation transformer. Until then unplug whenever nobody is aboard, and check the anodes more often. Never cut the earth.',
    urgency: 'next-layup',
    raise: 'Within 30 days for an aluminium hull or stern drive, or when anodes waste in weeks.',
    harms: ['deterioration', 'flooding'],
    references: ['ABYC A-28', 'ABYC E-11', 'ISO 13297'],
    worksheets: ['hull-potential', 'anode-life'],
    cautions: [mains],
    related: ['corrosion-stray-current', 'corrosion-stern-drive-anodes', 'ac-earth-missing'],
    diagram: 'galvanic-isolator',
    alsoCalled: ['zinc saver', 'isolation transformer', 'diode isolator'],
  },
);
