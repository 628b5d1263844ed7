import { entries } from '../entry.ts';

export const exhaustGasEntries = entries(
  {
    key: 'exhaust-gas-leak',
    system: 'exhaust',
    title: 'Exhaust gas leaking into the boat',
    lookFor:
      'With the engine running and hatches open, look for soot fans at joints, wisps and drips, and hold a meter in engine space, lazarette and cabins; then motor with the wind astern and read again. Soot at a dry joint is a leak even when it does not smell. Look at transom openings near the outlet and at cockpit lockers open to the engine space.',
    observed: 'Exhaust gas leaks at {item} {location}; the carbon monoxide meter read {reading}.',
    consequence:
      'Carbon monoxide collects in cabins and under cockpit covers and kills without warning. Hot gas chars what it plays on.',
    recommendation:
      'Do not run the engine with anyone below until a marine engineer has renewed the joint or pipe and measured the cabin again. Seal passages from engine space to cabin, and fit carbon monoxide alarms.',
    urgency: 'before-use',
    lower: 'Within 30 days when the meter read nothing in the cabins and only soot at a joint is seen.',
    harms: ['poisoning', 'fire-explosion'],
    references: ['ABYC P-1', 'ABYC A-24', 'ABYC TH-22'],
    worksheets: [],
    cautions: [
      'Wear an alarm meter yourself, keep hatches open, and leave at any rise or with a headache.',
      'Hot surfaces and turning shafts: look, do not reach.',
    ],
    related: [
      'fire-co-alarm-missing',
      'exhaust-elbow-corroded',
      'exhaust-hose-unequal-bore',
      'exhaust-dry-unlagged',
      'stern-drive-exhaust-bellows-missing',
    ],
    alsoCalled: ['CO', 'fumes', 'station wagon effect', 'back draught'],
  },
  {
    key: 'exhaust-dry-unlagged',
    system: 'exhaust',
    title: 'Dry exhaust unlagged or lagging broken',
    lookFor:
      'Follow a dry exhaust from manifold to outlet. Look for lagging that is torn, oily or wet, timber and wiring near it, clamps loose and a bellows cracked. After a run feel for warmth from a distance, without touching. Where a person can touch it a guard is needed. Scorched paint tells where it gets too hot.',
    observed: 'The dry exhaust {location} has its lagging missing {extent}, and passes close to {item}.',
    consequence:
      'Dry pipes run hot enough to char wood and light oil or vapour, and burn anybody who touches them.',
    recommendation:
      'Renew the lagging and guards, renew a cracked bellows, and keep cable, hose and timber at the distance its maker gives. Have a marine engineer check the supports.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when timber is charred, or oil or fuel can drip on it.',
    harms: ['fire-explosion', 'injury', 'poisoning'],
    references: ['ABYC P-1', 'ISO 9094'],
    worksheets: [],
    cautions: [
      'Old lagging may hold asbestos: do not disturb it; have it sampled.',
      'Pipes stay hot long after the engine stops.',
    ],
    related: ['exhaust-gas-leak', 'fire-heater-flue', 'engine-insulation-soaked'],
    alsoCalled: ['lagging', 'heat shield', 'dry stack', 'insulation blanket'],
  },
);
