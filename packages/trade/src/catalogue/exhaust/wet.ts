import { entries } from '../entry.ts';

export const wetExhaustEntries = entries(
  {
    key: 'exhaust-hose-unequal-bore',
    system: 'exhaust',
    title: 'Hoses of unequal bore clamped together, worst in the exhaust',
    lookFor:
      'Measure the outside diameter of each spigot and the bore of each hose on it; look where the system was altered after a new engine or muffler. A hose squeezed down by a clamp puckers and leaves channels, one stretched thins and splits, and a reducer made of tape and two hoses is neither. In the exhaust watch for a smaller hose after the mixing elbow. Cooling and drain hoses suffer too. A moulded reducer of the right kind, clamped on equal bores, is sound.',
    observed:
      'Hoses of unequal bore are clamped together {location} at {item}; the bores measured differ by {size}.',
    consequence:
      'The joint leaks when it gets warm and can pull off. In the exhaust that lets gas and water into the boat, and a smaller pipe raises the back pressure, so the engine runs hot and may draw water back into its cylinders.',
    recommendation:
      'Have a marine engineer rebuild the run in one bore, of the size the engine maker gives, with moulded or metal adapters where sizes change, two stainless clamps on a spigot long enough at every exhaust joint, and the back pressure measured afterwards.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before use in the exhaust when the joint leaks, has slipped, or lies near or below the waterline.',
    lower: 'At the next lay-up in a drain that is open above the waterline.',
    harms: ['flooding', 'poisoning', 'deterioration'],
    references: ['ABYC P-1', 'ISO 13363', 'SAE J2006'],
    worksheets: ['engine-readings'],
    cautions: [
      'Exhaust hot and gassy: cold engine for handling; run it only with hatches open and a carbon monoxide meter at hand.',
      'Keep clear of belts, shafts and coupling while it is run.',
    ],
    related: [
      'exhaust-hose-perished',
      'exhaust-elbow-corroded',
      'exhaust-gas-leak',
      'through-hull-hoses-unequal-bore',
      'plumbing-spring-clamps',
    ],
    diagram: 'hose-bores-matched',
    alsoCalled: ['reducer', 'mismatched hose', 'back pressure', 'hose clamp', 'jubilee clip'],
  },
  {
    key: 'exhaust-elbow-corroded',
    system: 'exhaust',
    title: 'Exhaust mixing elbow corroded',
    lookFor:
      'Look at the elbow for rust streaks, weeping at the weld, blistered paint and soot at the gasket, and feel beneath. From outside a sound-looking elbow may be paper thin inside, and the worst is at the point where the water joins. The only sure examination is to take it off, look inside, tap it and pressure-test it, as should be done periodically. A light run of rust from a bolt alone is no proof.',
    observed:
      'The mixing elbow of the {side} engine is corroded {extent} on the outside and weeps at {item}. It is {age} old.',
    consequence:
      'When it perforates, hot gas and sea water spray into the engine space. When it scales up inside, the back pressure rises and the engine overheats. Water can also run back into a cylinder.',
    recommendation:
      'Have a marine engineer take off, clean and pressure-test the elbow, renew the gasket and renew the elbow if it is thin or leaks. Repeat at the interval the engine’s maker gives; every few years in salt water where no interval is given (common practice, no source).',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when it leaks gas or water with the engine running.',
    lower: 'At the next lay-up when the outside is clean and only its age is unknown.',
    harms: ['poisoning', 'flooding', 'fire-explosion', 'deterioration'],
    references: ['ABYC P-1'],
    worksheets: ['engine-readings'],
    cautions: [
      'Burns: let it cool before it is touched, and do not hammer a thin one under pressure.',
      'A pressure test with air stores energy: low pressure only, by the engineer, faces away.',
      'Run the engine with hatches open; an exhaust leak is carbon monoxide.',
    ],
    related: [
      'exhaust-hose-unequal-bore',
      'exhaust-hose-perished',
      'exhaust-gas-leak',
      'engine-oil-emulsified',
    ],
    diagram: 'exhaust-elbow-wasted',
    alsoCalled: ['riser', 'injection bend', 'mixing bend', 'riser corroded', 'exhaust mixer'],
  },
  {
    key: 'exhaust-hose-perished',
    system: 'exhaust',
    title: 'Exhaust hose perished, soft or not exhaust hose',
    lookFor:
      'Squeeze it when cold, at the underside and at bends: soft, delaminated, bulged, or hard and cracked. Look at ends for rubber cut by clamps and a wire showing. Read the mark: hose for wet exhaust and no other. Heat damage near the elbow tells that it once ran without water. Surface grey bloom on sound rubber is harmless.',
    observed: 'The wet exhaust hose {location} is soft and perished {extent} and is marked {date}.',
    consequence:
      'It may collapse inside, where nothing shows, and choke the engine, or split and let exhaust gas and water into the boat. Below the waterline it can flood her.',
    recommendation:
      'Renew it with wet exhaust hose to the engine maker’s bore, supported, falling to the muffler, with two clamps at each end. Have the cause of any overheating found.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when it leaks, or is burnt or below the waterline.',
    harms: ['flooding', 'poisoning', 'deterioration'],
    references: ['SAE J2006', 'ISO 13363', 'ABYC P-1'],
    worksheets: ['engine-readings'],
    cautions: ['Engine cold. Run it only with hatches open and out of the way of belts.'],
    related: ['exhaust-hose-unequal-bore', 'exhaust-gas-leak', 'engine-cooling-flow'],
    alsoCalled: ['wet exhaust', 'exhaust pipe', 'delaminated hose', 'hose collapse'],
  },
  {
    key: 'exhaust-run-back',
    system: 'exhaust',
    title: 'Sea water can run back through the exhaust to the engine',
    lookFor:
      'Find the highest point of the exhaust after the muffler, and the injection point, each against the loaded waterline. With the injection near or below the waterline, the raw-water supply wants a vented loop well above it. See the loop rise, its valve clean and open; measure the muffler’s size. Ask about long cranking: it fills the muffler. A flap at the transom reduces waves only.',
    observed:
      'The exhaust {location} rises only {size} above the waterline and no vented loop was found at {item}.',
    consequence:
      'Water siphons or is pushed into the muffler and back into a cylinder. The next start then bends a connecting rod.',
    recommendation:
      'Have a marine engineer raise the exhaust loop and fit a vented loop in the raw water, with a muffler large enough for the water that runs back. Shut the seacock while cranking an engine that does not fire.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when the oil is emulsified or water stands in the exhaust manifold.',
    harms: ['deterioration', 'flooding', 'loss-of-control'],
    references: ['ABYC P-1'],
    worksheets: [],
    cautions: [
      'An engine with water in its cylinders must not be cranked: have an engineer turn it by hand.',
      'Keep clear of belts and coupling.',
    ],
    related: [
      'engine-oil-emulsified',
      'exhaust-hose-perished',
      'engine-cooling-flow',
      'heads-no-vented-loop',
      'through-hull-outlet-no-loop',
    ],
    diagram: 'exhaust-run-rise',
    alsoCalled: ['anti-siphon', 'vented loop', 'gooseneck', 'waterlock', 'lift muffler', 'hydrolock'],
  },
);
