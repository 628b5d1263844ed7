import { seizedSeacock } from '../cautions.ts';
import { entries } from '../entry.ts';

const sewage =
  'Wear gloves and eye protection and air the space well: sewage carries disease, and the gas from a holding tank can poison or burn.';

export const headsEntries = entries(
  {
    key: 'heads-no-vented-loop',
    system: 'plumbing-heads',
    title: 'Marine toilet without anti-siphon loop',
    lookFor:
      'Follow inlet and outlet hose from the bowl to the hull: a bowl whose rim lies near or below the waterline needs a loop on both that stands well above it when heeled, with a vent at the top. Inlet loops go between pump and bowl. Test the vent’s valve; salt closes it. Bowls that are well above at every heel need less.',
    observed:
      'The toilet {location} has no vented loop in {item}. The rim of the bowl is {size} below the waterline at rest.',
    consequence:
      'Water siphons through the bowl and floods her slowly, often overnight with valves left open.',
    recommendation:
      'Fit vented loops above the heeled waterline on inlet and outlet, and shut both seacocks after use.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before she is next left where the bowl rises by itself.',
    harms: ['flooding'],
    references: ['ISO 8099', 'ABYC H-27'],
    worksheets: [],
    cautions: [sewage, seizedSeacock],
    related: ['through-hull-outlet-no-loop', 'bilge-discharge-siphons', 'heads-discharge-unlawful'],
    diagram: 'toilet-vented-loop',
    alsoCalled: ['head', 'anti-siphon', 'syphon', 'WC'],
  },
  {
    key: 'heads-discharge-unlawful',
    system: 'plumbing-heads',
    title: 'Toilet can discharge overboard where it may not',
    lookFor:
      'Trace the outlet and any diverting valve, and see whether it can be locked to the tank in waters where discharge is forbidden. Read the marking on any treatment device. Ask for local rules: they differ from harbour to harbour. A portable toilet that is carried ashore is not a plumbed one.',
    observed: 'The toilet {location} discharges overboard through {item}, which was not secured shut.',
    consequence:
      'Discharge of sewage is forbidden in many waters and ends in fines; it spoils bathing water and shellfish.',
    recommendation:
      'Fit a holding tank or a treatment device of a kind the local rules accept, with the overboard valve secured closed in forbidden waters. Settle the local rule before altering anything.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where the local rule forbids it at the berth.',
    lower: 'A note where local rules allow it and a lock is fitted and used.',
    harms: ['pollution', 'unlawful'],
    references: ['33 CFR 159.7', 'MARPOL Annex IV', 'ISO 8099'],
    worksheets: [],
    cautions: [sewage],
    related: ['heads-tank-leaking', 'heads-no-vented-loop'],
    alsoCalled: ['MSD', 'marine sanitation device', 'Y-valve', 'diverter', 'holding tank', 'head'],
  },
  {
    key: 'heads-tank-leaking',
    system: 'plumbing-heads',
    title: 'Holding tank leaking, unsupported or its vent blocked',
    lookFor:
      'Feel along welds, corners and fittings for wet, and see straps and chocks: a full tank weighs much and moves. Follow the vent from tank to outside; a fine screen clogs with insects, paint or salt. Metal tanks rust from outside where wood holds wet. Bulges mean blocked vent or pump-out under vacuum.',
    observed: 'The holding tank {location} leaks at {item}, and its vent does not pass air.',
    consequence:
      'Pressure or vacuum splits the tank; sewage in the bilge harms people, and its gas can poison or burn.',
    recommendation:
      'Empty, flush and repair or replace the tank, secure it, and clear and enlarge the vent to the maker’s bore. Never blow through it by mouth.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where sewage lies in the accommodation.',
    lower: 'Next lay-up for vent smell only.',
    harms: ['pollution', 'poisoning', 'deterioration'],
    references: ['ISO 8099'],
    worksheets: [],
    cautions: [sewage],
    related: ['heads-discharge-unlawful', 'heads-hose-smelling'],
    alsoCalled: ['black water', 'blackwater tank', 'sanitation tank'],
  },
  {
    key: 'heads-hose-smelling',
    system: 'plumbing-heads',
    title: 'Toilet hoses smelling, clogged or sagging',
    lookFor:
      'Wipe the hose with a damp hot rag and smell the rag: taint there means the hose wall passes odour. Look for dips that hold liquid, narrowed ends and white scale inside. Smell from the pump-out seal or vent is not this fault.',
    observed:
      'The outlet hose of the toilet {location} sags between its supports; a damp cloth wiped along it took up the smell.',
    consequence:
      'The accommodation smells, and scale narrows the bore until it blocks and the pump bursts a joint.',
    recommendation: 'Renew with hose made for sanitation, sloped without sags, supported and clipped twice.',
    urgency: 'next-layup',
    lower: 'A note for a mild smell.',
    harms: ['deterioration'],
    references: [],
    worksheets: [],
    cautions: [sewage],
    related: ['heads-tank-leaking'],
    alsoCalled: ['head odor', 'sanitation hose', 'sewage smell'],
  },
);
