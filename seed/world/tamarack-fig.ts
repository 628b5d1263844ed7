import type { FindingSpec } from './types.ts';

/** Findings of the second firm's only survey. */
export const tamarackFindings: FindingSpec[] = [
  {
    key: 'tf-gas-hose',
    system: 'gas',
    position: { along: 0.9, height: 0.9, side: 'port' },
    title: 'Gas hose chafed where it leaves the locker',
    observed:
      'The hose to the cooker is chafed to its cord over 15 mm where it passes the unlined edge of the locker, 60 mm below its lid.',
    consequence: 'Gas may leak into the cabin and explode.',
    recommendation:
      'Do not use gas. Have a licensed gas fitter renew the hose, line the passage and test the system.',
    urgency: 'before-use',
    harms: ['fire-explosion'],
    references: ['ISO 10239 (liquefied petroleum gas systems)'],
    photos: [{ scene: 'gas-regulator', caption: 'Bottle and hose in the cockpit locker' }],
    state: 'open',
  },
  {
    key: 'tf-float-switch',
    system: 'bilge',
    position: { along: 0.5, height: 0.35, side: 'centre' },
    title: 'Bilge pump will not start by its float',
    observed: 'The float switch in the keel sump is stuck down by sand. The pump runs from its hand switch.',
    consequence: 'Rain or a leak would fill the boat with nobody on board.',
    recommendation: 'Clean the sump, renew the switch and try it with water.',
    urgency: 'within-days',
    withinDays: 30,
    harms: ['flooding'],
    references: ['ISO 15083 (bilge-pumping systems)'],
    photos: [{ scene: 'bilge-float', caption: 'Float switch in the keel sump' }],
    state: 'open',
  },
  {
    key: 'tf-stanchion',
    system: 'deck',
    position: { along: 0.93, height: 1, side: 'starboard' },
    title: 'Cracks at the starboard pushpit foot',
    observed: 'Four cracks, the longest 35 mm, run from the forward foot of the pushpit to starboard.',
    consequence: 'Water may enter the deck, and the pushpit may give way.',
    recommendation: 'Repair the gelcoat, fit a backing pad and rebed.',
    urgency: 'next-layup',
    harms: ['injury', 'deterioration'],
    references: ['ISO 15085 (prevention of falling overboard)'],
    photos: [{ scene: 'stanchion-crack', caption: 'Cracks at forward foot of pushpit' }],
    state: 'open',
  },
];
