import { seizedSeacock } from '../cautions.ts';
import { entries } from '../entry.ts';

export const plumbingPipeworkEntries = entries(
  {
    key: 'plumbing-spring-clamps',
    system: 'plumbing-heads',
    title: 'Spring clamps used as permanent connections',
    lookFor:
      'Look for bands or wire rings with two ears to squeeze, as on car heaters and household machines, on raw-water, fresh-water, drain and fuel hoses. Look for rust at the bend of the spring, a hose that turns by hand beneath and a mark of weeping. Makers fit them on some engine parts where they are meant to be; judge hoses that lead to the sea or carry pressure or fuel. Screw-driven clips with a rolled edge are the usual thing here.',
    observed:
      'Spring clamps hold the hoses at {item} {location}; {count} were found. They are rusted and the hose turns by hand.',
    consequence:
      'A spring loses its grip with rust and heat, and cannot be tightened. The hose creeps off its spigot under pressure or vibration.',
    recommendation:
      'Replace with stainless screw clips of the right size, two where the spigot takes them, and with hose made for the service. Work on fuel lines is for a qualified hand.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use on a hose below the waterline, on fuel, or in an exhaust.',
    lower: 'Next lay-up for low-pressure drains above the waterline.',
    harms: ['flooding', 'fire-explosion', 'deterioration'],
    references: ['ISO 9093', 'ABYC H-27'],
    worksheets: [],
    cautions: [
      seizedSeacock,
      'Protect your eyes when squeezing a spring clamp: it flies. Shut seacock or fuel cock first.',
    ],
    related: [
      'through-hull-hose-clips-poor',
      'through-hull-hoses-unequal-bore',
      'plumbing-hose-unsuitable',
      'fuel-hose-perished',
    ],
    diagram: 'hose-clamp-kind',
    alsoCalled: ['spring clips', 'constant-tension clamps', 'hose clamps', 'squeeze clips'],
  },
  {
    key: 'plumbing-hose-unsuitable',
    system: 'plumbing-heads',
    title: 'Garden or unreinforced hose in the sea-water or pressure plumbing',
    lookFor:
      'Read the print on the hose; boat hose states its kind. Clear or coloured hose without a spiral kinks, collapses on suction and blows up when warm. Squeeze it, look for flat spots and for algae in clear fresh-water hose. Short clear lengths used as sight gauges above the tank are no fault.',
    observed:
      'Hose of {material} is fitted to {item} {location}. It is kinked and bears no mark of its kind.',
    consequence:
      'It softens, collapses or bursts. Below the waterline it floods the boat; in fresh water it breeds slime.',
    recommendation:
      'Replace with reinforced hose made for its service and clipped twice where it leads to the sea; use food-grade hose for drinking water.',
    urgency: 'next-layup',
    raise: 'Within days below the waterline; before use where it is splitting.',
    harms: ['flooding', 'deterioration', 'poisoning'],
    references: ['ABYC H-23', 'ABYC H-27'],
    worksheets: [],
    cautions: ['Shut the seacock or turn the pump off before disturbing the hose.'],
    related: ['plumbing-spring-clamps', 'through-hull-hose-clips-poor'],
    alsoCalled: ['clear vinyl', 'garden hose', 'PVC hose'],
  },
  {
    key: 'plumbing-water-heater-relief',
    system: 'plumbing-heads',
    title: 'Water heater without a working relief valve or too hot to use',
    lookFor:
      'Find the pressure relief valve and see that it leads to where it can do no harm, has not been plugged and can be lifted by its lever. Look for weeping joints, wet insulation and rust beneath. Feel the taps: engine-heated water can scald. Look for a mixing valve near the outlet.',
    observed:
      'The relief valve of the water heater {location} is missing or seized. Water at the tap reached {reading}.',
    consequence: 'A heated closed tank can burst; hot water from an engine loop can burn.',
    recommendation:
      'Renew the relief valve to the heater maker’s rating and lead its outlet safely; fit a thermostatic mixing valve where the water is above a safe heat. Electrical parts are for a marine electrician.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where the valve is plugged.',
    harms: ['injury', 'shock', 'deterioration'],
    references: ['ABYC H-23'],
    worksheets: ['insulation-resistance'],
    cautions: [
      'Let the tank cool and disconnect shore supply before touching its valve or element; scalding water and mains voltage are both there.',
    ],
    related: ['plumbing-hose-unsuitable'],
    alsoCalled: ['calorifier', 'hot water tank', 'geyser', 'T&P valve'],
  },
  {
    key: 'plumbing-sink-drain-below-water',
    system: 'plumbing-heads',
    title: 'Sink or shower drain backs up or can flood when heeled',
    lookFor:
      'Compare the basin’s bottom with the outside waterline when heeled each way; open the drain with the boat at her loaded trim. Look for drains teed together and for a shower sump with its own pump and filter. Shut its seacock and see whether water comes in all the same.',
    observed:
      'The drain of {item} {location} lies {size} above the waterline at rest, and backs up when she heels.',
    consequence:
      'The sea comes up through the basin on one tack, and can go on doing it while nobody is aboard.',
    recommendation:
      'Close its seacock at sea and when left, raise or pump it out, and lead each drain apart.',
    urgency: 'next-layup',
    raise: 'Within days where it floods when she is left.',
    lower: 'A note where seacock is handy and used.',
    harms: ['flooding'],
    references: ['ABYC H-27'],
    worksheets: [],
    cautions: [],
    related: ['through-hull-outlet-no-loop', 'seacock-seized', 'deck-cockpit-drains-poor'],
    alsoCalled: ['galley drain', 'shower sump', 'grey water'],
  },
);
