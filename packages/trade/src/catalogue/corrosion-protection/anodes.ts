import { entries } from '../entry.ts';
import { chocked } from './cautions.ts';

export const anodeEntries = entries(
  {
    key: 'corrosion-stern-drive-anodes',
    system: 'corrosion-protection',
    title: 'Anodes missing or wasted on an aluminium stern drive',
    lookFor:
      'Count the anodes against the maker’s diagram: gearcase, cavitation plate, transom bracket, gimbal housing, trim rams, and those inside that are seen only by opening. Judge what is left by weight or thickness against a new one, and scrape to bright metal. Look for white powder, blistered paint and pits in the casting. An anode that is still as new after a season is not working: painted over, crusted, insulated or the wrong alloy.',
    observed:
      'On the {side} stern drive {count} anodes are missing or wasted. The casting is pitted {extent}.',
    consequence:
      'With no anode the drive itself is the least noble metal and dissolves. Castings perforate, seals leak and water enters the oil, the bellows housing or the boat.',
    recommendation:
      'Renew the whole set with anodes of one alloy, suited to the water the boat lies in: zinc or aluminium in salt, aluminium in brackish, magnesium in fresh only, as the drive’s maker allows. Fasten them to bright bare metal, never paint them, check the earth straps, and repaint the casting with a paint free of copper. Have the reason found: galvanic action through the shore earth and stray current are the usual ones. Renew again when about half is gone (common practice, no source).',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before launching again when the casting is perforated, or deeply pitted beside a seal or the bellows.',
    lower: 'At the haul-out in progress or the next one when about half remains and the casting is clean.',
    harms: ['deterioration', 'flooding', 'loss-of-control'],
    references: ['ABYC E-2', 'MIL-DTL-18001', 'MIL-DTL-24779'],
    worksheets: ['anode-life', 'hull-potential'],
    cautions: [chocked, 'A raised drive can drop: block it before working under it.'],
    related: [
      'corrosion-stray-current',
      'ac-galvanic-isolator',
      'corrosion-anode-painted',
      'corrosion-mixed-metals',
      'stern-drive-copper-paint',
      'stern-drive-water-in-oil',
    ],
    diagram: 'stern-drive-anodes',
    alsoCalled: ['zincs', 'sacrificial anodes', 'outdrive', 'sterndrive', 'galvanic corrosion'],
  },
  {
    key: 'corrosion-stray-current',
    system: 'corrosion-protection',
    title: 'Stray current from a neighbour, the dock or aboard',
    lookFor:
      'Anodes that vanish in weeks, bright metal with sharp-edged pits, and paint lifting round one fitting point to it. Hang a reference electrode over the side and read the boat’s bonded metal, first with the shore lead in, then pulled out, then with each battery circuit off in turn: the change names the source. A neighbour on the same pontoon is found when his lead or switches move your reading. Plain galvanic wear is slow, even, and does not change with switches.',
    observed:
      'The potential of the boat’s underwater metal was {reading} with shore power connected and changed when {item} was disconnected. Wastage is seen {location}.',
    consequence:
      'A stray direct current takes metal away many times faster than galvanic action and can eat through a drive, shaft or through-hull fitting within days or weeks. On the dock side it arrives by the earth wire that all boats share.',
    recommendation:
      'Unplug shore power while nobody is aboard. Have a qualified marine electrician trace the current, aboard first (wet bilge wiring, pumps, bonding), then from shore; tell the berth’s operator when a neighbour or the dock is the source. Fit a galvanic isolator or an isolation transformer, renew the anodes and examine every underwater fitting. A galvanic isolator stops only low voltages and does not cure a fault aboard.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before the boat is left afloat unattended when fittings or castings are already thinned.',
    harms: ['deterioration', 'flooding', 'shock'],
    references: ['ABYC E-2', 'ABYC A-28', 'ABYC E-11', 'ISO 13297'],
    worksheets: ['hull-potential', 'anode-life'],
    cautions: [
      'Where mains may be leaking the water itself is dangerous: nobody swims or dives, and the electrode is handled from the boat.',
      'Never disconnect the earth conductor to try it: pull the plug.',
      chocked,
    ],
    related: [
      'ac-galvanic-isolator',
      'corrosion-stern-drive-anodes',
      'ac-earth-neutral-joined',
      'corrosion-bonding-broken',
      'bilge-pump-wiring-poor',
      'through-hull-transducer-loose',
    ],
    diagram: 'galvanic-isolator',
    alsoCalled: ['electrolysis', 'hot marina', 'stray DC', 'neighbouring boat', 'electrolytic corrosion'],
  },
  {
    key: 'corrosion-anode-wasted',
    system: 'corrosion-protection',
    title: 'Hull or shaft anode wasted away or loose',
    lookFor:
      'Strike the anode lightly: it should ring and not turn. Brush it and judge what is left of its first thickness. Bolt holes worn oval mean it has lost contact, however much metal remains. See that a shaft collar is clear of the bearing so that water reaches it, and that anode bolts still connect inside.',
    observed: 'The anodes {location}, {count} in all, have wasted {extent} or are loose on their fixings.',
    consequence:
      'When the anode is gone or no longer touches, shaft, propeller and fittings begin to waste in its place.',
    recommendation:
      'Renew it with the same alloy and size on bright metal, with new bolts, and check the connection with a meter. Note the date: the next renewal follows from the rate.',
    urgency: 'next-layup',
    raise: 'Within 30 days when less than a quarter remains, or it has gone since the last lift.',
    harms: ['deterioration', 'flooding'],
    references: ['ABYC E-2', 'MIL-DTL-18001'],
    worksheets: ['anode-life', 'hull-potential'],
    cautions: [chocked],
    related: [
      'corrosion-anode-painted',
      'corrosion-bonding-broken',
      'corrosion-stray-current',
      'propeller-dezincified',
      'shaft-crevice-corrosion',
    ],
    alsoCalled: ['zinc', 'shaft collar', 'shaft zinc', 'pear anode'],
  },
  {
    key: 'corrosion-anode-painted',
    system: 'corrosion-protection',
    title: 'Anode painted, insulated or of the wrong alloy',
    lookFor:
      'Look for antifouling or gel coat on the anode, sealant between it and the metal, and a crust or skin that does not brush off, as zinc grows in fresh water. Ask what water the boat lies in. Measure from the anode to the metal it protects: it should be practically nothing. Unlike anodes on one boat waste one another before they protect her.',
    observed:
      'The anodes {location}, of {material}, show no wear since {date} and have no good contact with {item}.',
    consequence: 'It looks like new because it does nothing. The metal beside it is being used up instead.',
    recommendation:
      'Clean it to bare metal, or renew it in the alloy that suits the water, mount it on bright metal without sealant, and measure the connection and the boat’s potential afloat.',
    urgency: 'next-layup',
    raise: 'Within 30 days for an aluminium drive or hull, or when pitting has begun.',
    harms: ['deterioration'],
    references: ['ABYC E-2', 'MIL-DTL-18001', 'MIL-DTL-24779'],
    worksheets: ['hull-potential', 'anode-life'],
    cautions: [chocked],
    related: ['corrosion-stern-drive-anodes', 'corrosion-anode-wasted', 'corrosion-overprotected'],
    diagram: 'anode-contact',
    alsoCalled: ['zinc in fresh water', 'magnesium anode', 'passivated anode'],
  },
  {
    key: 'corrosion-engine-anode',
    system: 'corrosion-protection',
    title: 'Engine cooling anodes not renewed',
    lookFor:
      'Find the plugs by the engine’s handbook: heat exchanger, oil cooler, aftercooler, raw-water side. Ask when they were last out. A plug that breaks off short leaves its pencil inside to block tubes. Green or white weeping at the end caps is a sign.',
    observed:
      'The anodes of the engine’s cooling system at {item} had wasted {extent}; the last renewal noted was {date}.',
    consequence:
      'Without them the tubes and end caps of the heat exchanger waste through, and sea water enters the cooling water or the oil.',
    recommendation:
      'Renew all at once, count out the pieces, clear loose bits from the tubes and have the exchangers pressure-tested where the anodes were gone.',
    urgency: 'within-days',
    withinDays: 60,
    lower: 'At the next lay-up when a third or more is left.',
    harms: ['deterioration', 'loss-of-control'],
    references: [],
    worksheets: ['anode-life'],
    cautions: ['Engine cold and seacock shut: hot water under pressure scalds.'],
    related: ['engine-cooling-leak', 'engine-oil-emulsified', 'corrosion-anode-wasted'],
    alsoCalled: ['pencil zinc', 'heat exchanger zinc'],
  },
);
