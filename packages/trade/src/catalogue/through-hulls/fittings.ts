import { seizedSeacock, underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const throughHullFittingEntries = entries(
  {
    key: 'through-hull-pipe-before-seacock',
    system: 'through-hulls',
    title: 'Pipe, elbow or tee between through-hull and its seacock',
    lookFor:
      'Follow each opening from the hull inwards: the seacock should sit on the through-hull fitting itself, with its base on the hull. Nipples, elbows, tees or hose between the two are always open to the sea, whatever the handle says. Look for a tower of fittings that sways when the valve is worked. Tees above the seacock are a separate question.',
    observed:
      'Between the through-hull fitting and the seacock {location} there is {item} of {material}, about {size} long. It cannot be shut off from the sea.',
    consequence:
      'If that piece breaks or corrodes through, nothing aboard can close the hole. It also acts as a lever: a blow, a foot or a frozen handle bends it at its threads.',
    recommendation:
      'Ashore, remove the pieces and fit the seacock directly on the through-hull fitting, its flange bedded and backed on the hull, with any elbow or tee on the inboard side of it. Use one kind of metal suited to sea water throughout.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before next use where the piece is corroded, moves, or is of brass, galvanised steel or household plastic.',
    lower: 'Next lay-up where it lies well above the waterline at every heel and load.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ABYC H-27'],
    worksheets: [],
    cautions: [seizedSeacock, underBoat],
    related: ['seacock-seized', 'seacock-dezincified', 'through-hull-not-backed', 'through-hull-no-seacock'],
    diagram: 'seacock-on-fitting',
    alsoCalled: ['nipple', 'street elbow', 'thru-hull', 'skin fitting', 'riser', 'standpipe'],
  },
  {
    key: 'through-hull-no-seacock',
    system: 'through-hulls',
    title: 'Opening below the waterline without a seacock',
    lookFor:
      'Count the openings outside and find each one inside. Note those with hose straight on the fitting. Judge the height at full load and when heeled, not at the dock: an opening that dips is below the waterline for this purpose. Drains led from well above and made of reinforced pipe may be allowed by the standards; look at how they are built.',
    observed:
      'The opening {location}, {size} bore, has no seacock. The hose is pushed directly on the fitting.',
    consequence: 'When the hose or its clips fail, water comes in and cannot be stopped.',
    recommendation:
      'Fit a seacock of the proper kind on a through-hull that is bedded and backed, where it can be reached. Carry a tapered plug tied beside it.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where it is under water at rest and the hose is doubtful.',
    lower: 'Next lay-up where it dips only at extreme heel and the hose is new and double-clipped.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ABYC H-27'],
    worksheets: [],
    cautions: [underBoat],
    related: [
      'through-hull-hose-clips-poor',
      'through-hull-outlet-no-loop',
      'through-hull-pipe-before-seacock',
    ],
    alsoCalled: ['skin fitting', 'thru-hull', 'hull valve'],
  },
  {
    key: 'through-hull-not-backed',
    system: 'through-hulls',
    title: 'Through-hull without backing pad or with few threads engaged',
    lookFor:
      'Look for a pad between hull and seacock flange, level to the hull and sealed at its edge. A valve merely screwed on the spigot with no flange shows threads above the nut. Count the turns engaged; taper threads run on parallel ones bind after a turn or two and strip. Push sideways by hand: nothing should move.',
    observed:
      'The through-hull fitting {location} has no backing pad, and the valve is held by {count} turns of thread.',
    consequence:
      'A side blow or a stuck handle puts the whole load on a thin neck of thread, which may shear or part.',
    recommendation:
      'Ashore, refit with a bonded backing pad, a flanged seacock of the same thread as the through-hull and bolts or bonding as its maker directs.',
    urgency: 'next-layup',
    raise: 'Within days where it moves by hand or leaks at the thread.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ABYC H-27'],
    worksheets: [],
    cautions: [seizedSeacock, underBoat],
    related: ['through-hull-pipe-before-seacock', 'cored-hull-wet'],
    diagram: 'seacock-on-fitting',
    alsoCalled: ['backing block', 'NPT', 'NPS', 'BSP', 'mismatched threads', 'inline ball valve'],
  },
  {
    key: 'through-hull-plastic-degraded',
    system: 'through-hulls',
    title: 'Plastic through-hull brittle, cracked or not made for boats',
    lookFor:
      'Look at the flange outside for chalking and hair cracks, worst above water in sunlight, and at the neck inside where hose was levered. Household plumbing plastic lacks marks and flexes. Reinforced plastic fittings made for underwater use are marked and are not a fault. Press the flange with a thumbnail: sunburnt plastic flakes.',
    observed:
      'The plastic fitting {location} is chalky and cracked {extent}. It carries no mark showing it is made for use below the waterline.',
    consequence: 'Brittle plastic breaks at a touch, often when a fender or a foot finds it.',
    recommendation:
      'Replace with metal or reinforced plastic fittings made for the place, with a seacock where they are near or below the waterline.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where it is cracked and below or near the waterline.',
    lower: 'Next lay-up high in the topsides with a loop in the hose.',
    harms: ['flooding'],
    references: ['ISO 9093', 'ABYC H-27'],
    worksheets: [],
    cautions: [underBoat, 'Press and do not lever: old plastic snaps.'],
    related: ['through-hull-no-seacock', 'through-hull-outlet-no-loop'],
    alsoCalled: ['nylon skin fitting', 'UV damage', 'sunburnt', 'thru-hull'],
  },
  {
    key: 'through-hull-transducer-loose',
    system: 'through-hulls',
    title: 'Log or depth transducer loose, leaking or without its blank',
    lookFor:
      'Look at the housing for drips, a cracked nut, perished rings and a missing retaining pin. Ask for the blanking plug and see that it fits. Outside look at bedding and fairing block. Transducers are holes without a seacock and deserve the same attention.',
    observed: 'The transducer housing {location} weeps at {item}; no blanking plug was found aboard.',
    consequence: 'An insert that lifts or is drawn for cleaning leaves an opening straight to the sea.',
    recommendation:
      'Renew rings and retaining pin, tie the blank beside the housing, and re-bed the fitting ashore where it weeps.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where the housing or its nut is cracked.',
    lower: 'A note where only the blank is missing.',
    harms: ['flooding'],
    references: ['ISO 9093'],
    worksheets: [],
    cautions: [underBoat, 'Do not draw an insert afloat to look at it.'],
    related: ['cored-hull-wet', 'electronics-depth-log-failing'],
    alsoCalled: ['paddle wheel', 'log impeller', 'echo sounder', 'depth sounder'],
  },
);
