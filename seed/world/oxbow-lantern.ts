import type { FindingSpec } from './types.ts';

/** Draft findings of Oxbow Lantern's pre-purchase survey: steel motor vessel. */
export const oxbowFindings: FindingSpec[] = [
  {
    key: 'ox-plating',
    system: 'hull',
    title: 'Bottom plating thinned at the port turn of bilge',
    observed:
      'Ultrasonic readings at frames 11 to 13, port, 80 mm below the lower chine: 4.4, 4.6, 4.3 mm. Plating there was 6 mm when built according to the drawing on board. The loss is 28 % at the worst point, over 0.6 m by 0.3 m. The other 112 points lie between 5.3 and 5.9 mm.',
    consequence:
      'A quarter of the thickness lost is commonly taken as the mark for repair. Grounding or lying against a wall could hole the plate here.',
    recommendation:
      'Crop the area back to full thickness and let in a plate with rounded corners at least one frame space long. Clear and coat the inside, where water stands under the shower tray.',
    urgency: 'within-days',
    withinDays: 60,
    cost: {
      low: 380000,
      high: 620000,
      currency: 'EUR',
      basis: 'quotation',
      note: 'Tarnmouth Slip, one plate of about 1.2 m², lifting and painting included',
    },
    harms: ['flooding', 'structural-failure'],
    references: ['US Army TB 55-1900-201-45/1 (wastage of steel hulls)'],
    photos: [
      { scene: 'ut-gauge-plate', caption: 'Thickness gauge at frame 12, port' },
      { scene: 'plate-pitting', caption: 'Pits after wire brushing, 200 mm rule' },
    ],
    state: 'draft',
  },
  {
    key: 'ox-hull-anodes',
    system: 'corrosion-protection',
    title: 'Hull anodes painted over',
    observed:
      'All eight magnesium hull anodes are covered with black bitumen paint. They show no wear after the four years since they were welded on. Bare steel and pits are seen within 0.5 m of the stern pair.',
    consequence: 'A painted anode does nothing. The hull corrodes in its place.',
    recommendation:
      'Clean or renew the anodes. Check first that their metal suits the water the vessel will lie in, and fit a galvanic isolator or transformer if she will use shore power.',
    urgency: 'within-days',
    withinDays: 30,
    cost: { low: 45000, high: 70000, currency: 'EUR', basis: 'opinion', note: '' },
    harms: ['deterioration'],
    references: ['ISO 13297 (electrical systems)'],
    photos: [{ scene: 'hull-anode', caption: 'Port stern anode under bitumen' }],
    state: 'draft',
  },
  {
    key: 'ox-skin-fitting',
    system: 'through-hulls',
    title: 'Engine inlet valve corroded against the steel stub',
    observed:
      'The 50 mm brass gate valve is screwed straight on to the steel stub of the engine inlet, starboard, frame 6. The stub is scaled and 2.9 mm thick at its root. The wheel turns but the gate does not close fully.',
    consequence: 'Brass on steel in sea water wastes the steel. If the stub fails the engine space floods.',
    recommendation:
      'Renew the stub in heavy-wall tube with a flange and fit a full-bore valve that can be seen to be shut, insulated from the steel as its maker directs.',
    urgency: 'before-use',
    cost: {
      low: 52000,
      high: 78000,
      currency: 'EUR',
      basis: 'opinion',
      note: 'At the same lifting as the plating',
    },
    harms: ['flooding'],
    references: ['ISO 9093 (seacocks and through-hull fittings)'],
    photos: [{ scene: 'gate-valve-steel', caption: 'Engine inlet: gate valve on the steel stub', gps: true }],
    state: 'draft',
  },
  {
    key: 'ox-float-switch',
    system: 'bilge',
    title: 'Float switch of the after bilge pump jammed',
    observed:
      'The float switch in the after bilge is held down by a cable tie end and oily sludge; the pump did not start with 140 mm of water over it. It runs by hand from the wheelhouse. There is no high-water alarm.',
    consequence: 'Water would rise unnoticed with nobody on board.',
    recommendation:
      'Clean the bilge, renew and secure the switch where it can be tested, and fit an alarm heard from the wheelhouse and deck.',
    urgency: 'within-days',
    withinDays: 14,
    cost: { low: 9000, high: 14000, currency: 'EUR', basis: 'opinion', note: '' },
    harms: ['flooding', 'pollution'],
    references: ['ISO 15083 (bilge-pumping systems)'],
    photos: [{ scene: 'bilge-float', caption: 'Float switch in the after bilge' }],
    state: 'draft',
  },
  {
    key: 'ox-fuel-hose',
    system: 'fuel',
    title: 'Flexible fuel hose without fire-resistance marking',
    observed:
      'The hose between starboard tank and filter is clear plastic tube, yellowed and hard, 0.9 m long, pushed on and held by worm-drive clips. No marking is found on it. The tank’s own label is readable.',
    consequence: 'Such tube fails within seconds in a fire and would feed it with fuel.',
    recommendation:
      'Replace it with hose marked as fire resistant for diesel and fit a valve at the tank that can be shut from outside the engine space.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['fire-explosion', 'pollution'],
    references: ['ISO 7840 (fire-resistant fuel hoses)', 'ISO 10088 (permanently installed fuel systems)'],
    photos: [{ scene: 'fuel-tank-label', caption: 'Starboard tank label, outlet and plastic tube' }],
    state: 'draft',
  },
  {
    key: 'ox-wiring',
    system: 'dc-electrical',
    title: 'Unfused, unsupported wiring behind the wheelhouse panel',
    observed:
      'Some thirty conductors, several of domestic solid-core cable, hang loose behind the panel. Nine are joined with screw blocks wrapped in tape. Two 6 mm² feeds leave the busbar without fuse.',
    consequence: 'Chafe or a loose joint may start a fire behind the panel, in the steering position.',
    recommendation:
      'Have a competent marine electrician strip out what is dead, protect every circuit at its source, support and label what stays.',
    urgency: 'within-days',
    withinDays: 60,
    cost: {
      low: 65000,
      high: 140000,
      currency: 'EUR',
      basis: 'opinion',
      note: 'Depends on what is found behind the lining',
    },
    harms: ['fire-explosion'],
    references: ['ISO 13297 (electrical systems)'],
    photos: [
      { scene: 'wiring-jumble', caption: 'Behind the wheelhouse panel', orientation: 6 },
      { scene: 'wiring-joint', caption: 'One of the taped joints, unwrapped' },
    ],
    state: 'draft',
  },
  {
    key: 'ox-engine',
    system: 'engine',
    title: 'Alternator belt worn, dust over front of engine',
    observed:
      'Black dust lies on the front of the engine and the alternator. The belt is glazed, with cracks across its inner face 15 mm apart. The pulleys are 3 mm out of line measured with a straight edge. Hours shown: 5 872.',
    consequence: 'The belt drives the coolant pump. If it parts the engine will overheat.',
    recommendation: 'Align the pulleys, renew the belt, tension it as the maker states and carry a spare.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['loss-of-control'],
    references: [],
    photos: [{ scene: 'engine-belt', caption: 'Belt and pulleys, dust on the alternator' }],
    state: 'draft',
  },
  {
    key: 'ox-exhaust',
    system: 'exhaust',
    title: 'Lagging of the dry exhaust broken away',
    observed:
      'Over 0.4 m above the manifold the lagging of the dry exhaust has fallen off. Bare pipe was at 310 °C by infrared thermometer after 20 minutes at 1 500 r/min. Pine battens stand 45 mm away and are browned.',
    consequence: 'The battens may catch fire, and anyone working there will be burnt.',
    recommendation:
      'Renew the lagging over the whole length, oil-proof on its outside, and clear wood from beside it. Settle first whether the old lagging contains asbestos.',
    urgency: 'before-use',
    cost: { low: 41500, high: 41500, currency: 'EUR', basis: 'quotation', note: 'Tarnmouth Slip' },
    harms: ['fire-explosion', 'injury', 'poisoning'],
    references: ['ISO 9094 (fire protection)'],
    photos: [{ scene: 'exhaust-lagging', caption: 'Bare exhaust pipe and browned batten' }],
    state: 'draft',
  },
  {
    key: 'ox-steering-ram',
    system: 'steering',
    title: 'Steering ram leaking oil at the rod seal',
    observed:
      'Oil wets the rod of the steering ram and stands 5 mm deep in the tray. The wheel creeps two turns in five minutes with the rudder held. The ram’s bracket is sound.',
    consequence: 'Loss of oil lets air in and the rudder will no longer follow the wheel.',
    recommendation: 'Reseal or replace the ram, bleed the system and check the fluid level a week later.',
    urgency: 'within-days',
    withinDays: 14,
    harms: ['loss-of-control', 'pollution'],
    references: ['ISO 10592 (hydraulic steering systems)'],
    photos: [{ scene: 'steering-ram', caption: 'Rod end of the steering ram, oil in the tray' }],
    state: 'draft',
  },
  {
    key: 'ox-side-deck',
    system: 'deck',
    title: 'Rust under the coating at the foot of the bulwark',
    observed:
      'Paint is lifted by rust for 2.2 m along the foot of the port bulwark, abreast of the wheelhouse. Plate 3.4 mm where cleaned against 4 mm elsewhere. A freeing port in the middle of it is half closed by rust.',
    consequence: 'Water that cannot run off stays on the side deck and the plate wastes faster.',
    recommendation:
      'Clear the freeing port, blast or grind to bright metal, coat as the paint maker directs.',
    urgency: 'next-layup',
    cost: { low: 120000, high: 250000, currency: 'EUR', basis: 'opinion', note: '' },
    harms: ['deterioration'],
    references: [],
    photos: [{ scene: 'deck-rust', caption: 'Foot of the port bulwark, lifted paint', orientation: 3 }],
    state: 'draft',
  },
];
