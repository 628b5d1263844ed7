import { entries } from '../entry.ts';

const stays =
  'Treat a fixed system as live: pull no cable, bump no cylinder and stay out of the space while it is being worked on. Its gas can suffocate.';

export const engineSpaceFireEntries = entries(
  {
    key: 'fire-fixed-system-unserviced',
    system: 'fire-safety',
    title: 'Fixed extinguishing system overdue or out of action',
    lookFor:
      'Read the weight and date on the cylinder’s tag, the gauge, and the agent against what it should be. See that the pull is free, sealed and marked, that the cylinder is fast and not rusty, and how ventilation and engine stop are dealt with when it goes off. An empty bracket or a disconnected pull is not rare.',
    observed: 'The fixed extinguishing system {location} shows {reading} and was last serviced in {date}.',
    consequence:
      'A cylinder that has leaked or whose pull is seized puts no fire out. With engine or blower still running the gas is blown away.',
    recommendation:
      'Have the system weighed, serviced and tagged by a competent company, and see that engine and blower stop when it is set off. Carry a portable extinguisher and fire port in the meantime.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use with petrol engines when the cylinder is empty or cannot be set off.',
    harms: ['fire-explosion'],
    references: ['ISO 9094', 'NFPA 12', 'NFPA 2001', 'ABYC A-4'],
    worksheets: ['carriage'],
    cautions: [stays],
    related: ['fire-port-missing', 'fire-extinguisher-expired', 'fuel-shut-off-missing'],
    alsoCalled: ['automatic extinguisher', 'CO2 system', 'clean agent', 'engine room fire system'],
  },
  {
    key: 'fire-port-missing',
    system: 'fire-safety',
    title: 'No way to discharge an extinguisher into a closed engine space',
    lookFor:
      'Look on the cover or bulkhead of the engine space for a fire port: a labelled hole with a breakaway cover, of a size that the extinguisher’s nozzle enters. Check that the jet is not stopped behind by sound insulation, and that the extinguisher to use hangs beside it. A fixed system in working order does the same job.',
    observed: 'The closed engine space has no fire port {location} and no fixed extinguishing system.',
    consequence:
      'Opening the hatch to reach a fire lets in air, and the fire flares into the face of whoever opens it.',
    recommendation:
      'Fit a marked fire port near the extinguisher, or a fixed system, and see that fuel and ventilation can be shut from outside.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Within 30 days with petrol engines.',
    harms: ['fire-explosion', 'injury'],
    references: ['ISO 9094', 'ABYC A-4'],
    worksheets: [],
    cautions: [stays, 'Look into the space with the engine stopped and cold.'],
    related: ['fuel-shut-off-missing', 'fire-fixed-system-unserviced', 'engine-insulation-soaked'],
    alsoCalled: ['fire hole', 'discharge port', 'engine box'],
  },
);
