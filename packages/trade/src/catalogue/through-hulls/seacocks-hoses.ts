import { seizedSeacock, underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const seacockHoseEntries = entries(
  {
    key: 'seacock-seized',
    system: 'through-hulls',
    title: 'Seacock seized or will not close fully',
    lookFor:
      'Work each handle by hand over its full travel; do not use a bar. Open a hose or watch flow to prove that it really shuts: a ball can turn short of its seat, and a handle can turn on a stripped stem. A lever that is stiff but moves is another matter than one that stays where it is. Look for bent handles, missing handles and nuts on the packing.',
    observed: 'The seacock {location}, serving {item}, could not be closed by hand.',
    consequence: 'When a hose or pump fails behind it, the water cannot be shut off.',
    recommendation:
      'Ashore, strip, clean and grease where the kind allows; otherwise renew it. Work every seacock monthly after that, and shut those not needed when she is left.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where the hose it guards is poor or it leaks.',
    lower: 'Next lay-up for an opening well above the waterline.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ABYC H-27'],
    worksheets: [],
    cautions: [seizedSeacock],
    related: [
      'seacock-dezincified',
      'seacock-gate-valve',
      'seacock-plug-missing',
      'access-seacock-unreachable',
      'through-hull-hose-clips-poor',
    ],
    diagram: 'seacock-lever-and-plug',
    alsoCalled: ['ball valve', 'sea valve', 'stuck valve', 'cone valve'],
  },
  {
    key: 'seacock-dezincified',
    system: 'through-hulls',
    title: 'Brass fitting turned pink and brittle',
    lookFor:
      'Scrape a small patch at neck, tail and body and look at the colour: yellow is healthy brass or bronze, pink or coppery is metal that has lost its zinc. Green crust and white powder hint at it. Tap softly with a small spanner: a dull chalky note is bad. Tails and nipples are often of poorer metal than the body. Marks of the alloy, if any, are on the body.',
    observed: 'The fitting {location}, {item}, is pink where scraped, {extent}. It appears to be {material}.',
    consequence:
      'Zinc has been dissolved out and a weak sponge of copper is left. It keeps its shape until leaned on, then breaks off.',
    recommendation:
      'Renew seacock, through-hull and tail as a set in bronze, a brass that resists dezincification or reinforced plastic made for the purpose. Check the others of the same age, the bonding and the anodes.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where it weeps, is cracked, or the pink goes deep.',
    lower: 'Next lay-up for a faint blush on a fitting above the waterline.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ABYC E-2'],
    worksheets: ['hull-potential'],
    cautions: [seizedSeacock, underBoat],
    related: [
      'seacock-seized',
      'through-hull-pipe-before-seacock',
      'corrosion-bonding-broken',
      'corrosion-stray-current',
    ],
    alsoCalled: ['dezincification', 'pink brass', 'DZR', 'CR brass', 'corroded seacock'],
  },
  {
    key: 'seacock-gate-valve',
    system: 'through-hulls',
    title: 'Gate valve used as a seacock',
    lookFor:
      'A round wheel that takes many turns marks it. One cannot tell by looking whether it is open. Turn it gently: the stem often turns while the gate stays. A lever at right angles to the pipe is a ball or cone kind, and is not this fault.',
    observed: 'A gate valve of {material} serves the opening {location}. It turned without a clear stop.',
    consequence:
      'The stem corrodes through and lets the gate fall or stay; dirt stops it from closing. Household brass ones waste quickly in sea water.',
    recommendation:
      'Replace with a quarter-turn seacock of metal or plastic made for the purpose, whose handle shows whether it is open.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where it leaks or will not shut below the waterline.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ABYC H-27'],
    worksheets: [],
    cautions: [seizedSeacock],
    related: ['seacock-seized', 'seacock-dezincified'],
    alsoCalled: ['wheel valve', 'household valve'],
  },
  {
    key: 'seacock-plug-missing',
    system: 'through-hulls',
    title: 'No tapered plug tied at the seacock',
    lookFor:
      'Look for a soft-wood or foam plug of the right size tied with a light line to each through-hull. Try it in the fitting’s mouth or compare the sizes. A bag of mixed plugs in a far locker serves badly in the dark.',
    observed: 'No plug was found tied at {count} of the seacocks, among them {item} {location}.',
    consequence: 'When a hose or fitting goes, the next minutes count, and the plug must be at hand.',
    recommendation:
      'Tie a plug of matching size beside each through-hull fitting, and keep a mallet and torch near.',
    urgency: 'note',
    raise: 'Next lay-up for boats going offshore.',
    harms: ['flooding'],
    references: [],
    worksheets: [],
    cautions: [],
    related: ['seacock-seized'],
    diagram: 'seacock-lever-and-plug',
    alsoCalled: ['bung', 'softwood bung', 'DC plug', 'tapered plug'],
  },
  {
    key: 'through-hull-hose-clips-poor',
    system: 'through-hulls',
    title: 'Below-water hose perished or held by poor clips',
    lookFor:
      'Bend the hose near its ends and look for cracks, soft spots, kinks and blistering. Run a finger round beneath each clip for rust and look at the screw housing: bands that look bright may be rusty there. Look at how far the hose covers the tail, and that both clips bear on it. Slotted bands cut soft hose.',
    observed:
      'The hose at {item} {location} is cracked {extent}; it is held by {count} clips, of which the bands are rusty.',
    consequence:
      'The hose is as much a part of the hull as the planking when its seacock is open. If it splits or slides off, the sea comes in at full bore.',
    recommendation:
      'Replace with hose made for underwater use and two stainless clips of good quality at each end, where the tail is long enough for both. Keep the seacock closed until done.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where it is split or leaks below the waterline.',
    lower: 'Next lay-up for hose that is old but supple, and clips stained only.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ABYC H-27'],
    worksheets: [],
    cautions: [seizedSeacock, 'Shut the seacock before disturbing any hose.'],
    related: ['through-hull-hoses-unequal-bore', 'plumbing-spring-clamps', 'seacock-seized'],
    alsoCalled: ['hose clamps', 'jubilee', 'worm-drive clip', 'double clipped', 'perished hose'],
  },
  {
    key: 'through-hull-hoses-unequal-bore',
    system: 'through-hulls',
    title: 'Hoses of unequal bore clamped together',
    lookFor:
      'Find joints made without a fitting: a thick hose pushed over a thin one, a hose stretched on an oversize tail, or tape or a strip of rubber packed beneath a clip. Look for weeping, wrinkles and clips screwed to the end of their band. A stepped adapter that fits both hoses is a proper joint; this is not one.',
    observed:
      'Hoses of unequal bore are clamped together {location}, packed with {material}; the larger measures {size}. The joint weeps.',
    consequence:
      'The clip has only wrinkled rubber to bear upon. The joint slackens with heat and vibration, then creeps apart; below the waterline it floods her. In an exhaust it is worse still: heat and pulsing act on it, and fumes and cooling water come in.',
    recommendation:
      'Cut out the joint and use one hose of the right bore, or a stepped connector made for it with each hose fully on its own spigot and twice clipped. Do the exhaust first.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use below the waterline or in an exhaust.',
    lower: 'Next lay-up for a drain well above the water which leads nowhere harmful.',
    harms: ['flooding', 'poisoning', 'deterioration'],
    references: ['ISO 9093', 'ABYC H-27', 'ABYC P-1'],
    worksheets: [],
    cautions: [
      'Shut the seacock before touching the joint; let engine and exhaust cool.',
      'Ventilate, and treat any exhaust leak as a carbon monoxide danger.',
    ],
    related: ['through-hull-hose-clips-poor', 'plumbing-spring-clamps', 'exhaust-hose-unequal-bore'],
    diagram: 'hose-bores-matched',
    alsoCalled: ['mismatched hoses', 'hose over hose', 'stepped hose', 'adaptor', 'reducer'],
  },
  {
    key: 'through-hull-outlet-no-loop',
    system: 'through-hulls',
    title: 'Outlet near the waterline with low hose and no loop or valve',
    lookFor:
      'From outside mark outlets that dip when she is loaded, heeled or squats under power. Inside see whether each hose rises well above that level, and whether it can be shut. Fill lockers and tanks to full trim in mind: boats sit lower than drawn.',
    observed:
      'The outlet on the {side} side {location} is {size} above the waterline at rest. Its hose has no loop and no valve.',
    consequence: 'When the outlet dips, water runs back through the hose and can go on by siphon.',
    recommendation:
      'Raise the hose in a loop well above the highest heeled waterline, with an anti-siphon valve where it serves a pump or toilet, and fit a seacock where the outlet can dip.',
    urgency: 'next-layup',
    raise: 'Within days where water has already been found inside from it.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ISO 15083', 'ABYC H-27'],
    worksheets: [],
    cautions: [],
    related: ['bilge-discharge-siphons', 'heads-no-vented-loop', 'through-hull-no-seacock'],
    alsoCalled: ['anti-siphon', 'vented loop', 'swan neck', 'syphon'],
  },
);
