import { underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';
import { machineryStopped, turningShaft } from './cautions.ts';

/** Where the shaft comes in through the hull, and what joins it to the engine. */
export const sternGlandEntries = entries(
  {
    key: 'stern-gland-leaking',
    system: 'shaft-propeller',
    title: 'Stern gland leaks too much or runs hot',
    lookFor:
      'Look at a packed gland at rest and with the shaft turning in gear. A few drops a minute under way are normal for plain flax packing, none or hardly any for modern packings; a stream at rest is not. Stop, then feel the housing: warm is normal, too hot to hold is not. See whether any thread is left to take up, whether the lock nut is tight and whether spray has rusted the parts near it.',
    observed:
      'The packed stern gland {location} leaked {reading} with the shaft turning. The thread left to take it up measured {size}.',
    consequence:
      'A gland left to drip fast fills the bilge once batteries or pump fail, and its spray corrodes machinery. One screwed down too hard runs dry and scores the shaft.',
    recommendation:
      'Renew the packing with rings of the right size, joints staggered, and adjust it afloat after running in. Where the gland has no adjustment left or leaks again soon, draw the shaft and examine it for wear under the packing.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before use when it runs at rest, cannot be slowed by adjustment, or the bilge pump runs often because of it.',
    lower: 'A note when a slight adjustment stopped it during the survey.',
    harms: ['flooding', 'deterioration'],
    references: ['ABYC P-6'],
    worksheets: ['flooding-rate', 'shaft-wear'],
    cautions: [turningShaft, 'Do not slacken a gland afloat without the means at hand to stop the water.'],
    related: ['stern-gland-hose-perished', 'shaft-worn-in-bearing', 'shaft-misaligned'],
    diagram: 'stern-gland',
    alsoCalled: ['stuffing box', 'packing gland', 'stern tube leak', 'flax packing'],
  },
  {
    key: 'stern-gland-hose-perished',
    system: 'shaft-propeller',
    title: 'Hose of the flexible stern gland perished or badly clamped',
    lookFor:
      'Follow the short hose that joins the gland to the stern tube all round with a mirror. Press it: cracks, soft places, oil swelling, bulges and chafe are faults. It should be thick reinforced hose made for the purpose, with two stainless clamps at each end where the tube is long enough for both. Look under the clamps for rust, which starts inside the housing of the screw.',
    observed:
      'The hose of the stern gland {location} was cracked or swollen {extent}. It was held by {count} clamps, some of them rusted.',
    consequence:
      'If the hose or its clamps fail, water enters through the whole gap round the shaft. It is below the waterline, hard to reach and has no seacock.',
    recommendation:
      'Lift the boat, uncouple the shaft and renew the hose with reinforced hose for stern glands and new clamps, doubled where there is room. Renew the packing at the same time.',
    urgency: 'before-use',
    lower:
      'At the next haul-out when the hose is sound and only old, or only single clamps in good order are fitted.',
    harms: ['flooding'],
    references: ['ABYC P-6'],
    worksheets: ['flooding-rate'],
    cautions: [
      'Do not twist or lever an old hose afloat: it can split under the hand.',
      machineryStopped,
      underBoat,
    ],
    related: ['stern-gland-leaking', 'shaft-seal-bellows-aged'],
    diagram: 'stern-gland',
    alsoCalled: ['stuffing box hose', 'stern tube hose', 'flexible gland'],
  },
  {
    key: 'shaft-seal-bellows-aged',
    system: 'shaft-propeller',
    title: 'Shaft seal with rubber bellows or lip past its service life',
    lookFor:
      'Look for the date moulded in the rubber or the date of renewal in the owner’s papers, and compare with the maker’s interval. Examine the folds for cracks, oil, paint and chafe, the clamps, and the collar that presses the faces together: its screws should bite and be backed by a second clamp or ring. On fast boats the water feed or vent hose must be connected and lead well above the waterline.',
    observed:
      'The shaft seal {location} was marked {date}. Its rubber was cracked or oily {extent}. No record of renewal was seen.',
    consequence:
      'The rubber is the only barrier between the sea and the shaft opening. When it splits, or its collar slips along the shaft, the inflow is large and sudden.',
    recommendation:
      'Renew the rubber and clamps at the maker’s interval, with the boat lifted. Secure the collar by the maker’s method and fit a second clamp or anode collar behind it. Prove the water feed or vent clear before launching.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the rubber is cracked through the surface, weeps or the collar has moved.',
    lower: 'At the next haul-out when the rubber looks sound and only its papers are missing.',
    harms: ['flooding'],
    references: [],
    worksheets: ['flooding-rate'],
    cautions: [
      turningShaft,
      'Do not press the faces apart afloat more than the maker’s bleeding instructions ask: water enters at once.',
    ],
    related: ['stern-gland-hose-perished', 'shaft-coupling-insecure'],
    alsoCalled: ['dripless seal', 'face seal', 'lip seal', 'mechanical seal', 'rubber stern gland'],
  },
  {
    key: 'shaft-coupling-insecure',
    system: 'shaft-propeller',
    title: 'Shaft coupling can work loose and let the shaft slide out',
    lookFor:
      'Examine the coupling for fretting dust (reddish powder), loose or odd bolts, missing spring washers or locking, and set screws that are not wired. A clamped coupling should show a gap at its split; closed tight, it may no longer grip. See whether anything aboard, such as a clamp or collar on the shaft, would stop it leaving the boat.',
    observed:
      'At the coupling of the {side} shaft {count} fastenings were loose or not locked. Fretting dust was seen {location}.',
    consequence:
      'In astern the propeller pulls on the coupling. If it lets go, the shaft slides aft until the propeller meets the rudder or leaves the boat, and the stern tube is open to the sea.',
    recommendation:
      'Have a marine engineer open, clean and examine the coupling, its key and bolts, refit with the right bolts at the maker’s torque and lock them. Wire set screws that seat in dimples in the shaft. A collar clamped to the shaft inside the boat is a cheap second line of defence.',
    urgency: 'before-use',
    lower: 'Within 30 days when all is tight and only the wire or locking is missing.',
    harms: ['flooding', 'loss-of-control'],
    references: ['ABYC P-6', 'SAE J756'],
    worksheets: ['flooding-rate'],
    cautions: [machineryStopped],
    related: ['shaft-misaligned', 'shaft-seal-bellows-aged'],
    alsoCalled: ['half coupling', 'flange', 'set screws', 'shaft pulled out'],
  },
  {
    key: 'shaft-turning-unguarded',
    system: 'shaft-propeller',
    title: 'Turning shaft or coupling unguarded where people reach or stow things',
    lookFor:
      'Open every locker and sole board over the shaft line and ask who could put a hand, foot, rope or sail bag there with the engine running. Bolt heads, set screws and split clamps catch cloth. A shaft behind a panel that needs tools counts as guarded.',
    observed:
      'The shaft and coupling were open to touch {location}, where gear is stowed and people reach with the engine running.',
    consequence: 'Clothing, hair or rope is wound up faster than anybody can let go; injuries are severe.',
    recommendation:
      'Fit a stout removable cover or screen over the shaft and coupling that still lets the gland be seen, and keep the space clear of stowed gear.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when it lies in an accommodation or stowage space used under way.',
    lower: 'A note when only the engine space, closed under way, gives access.',
    harms: ['injury', 'loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [turningShaft],
    related: ['shaft-coupling-insecure'],
    alsoCalled: ['shaft guard', 'rotating machinery', 'entanglement'],
  },
);
