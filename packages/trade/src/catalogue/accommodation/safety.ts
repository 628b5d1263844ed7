import { closedSpaces } from '../cautions.ts';
import { entries } from '../entry.ts';

export const accommodationEntries = entries(
  {
    key: 'accommodation-heavy-gear-unsecured',
    system: 'accommodation',
    title: 'Sole boards and heavy gear loose in a knock-down',
    lookFor:
      'Ask what would fly if she lay on her side. Pull at cooker, tools, spare anchors, engine box, outboard and sole boards. A board held by its weight alone is loose. See that lockers over berths shut and stay shut. Gear lashed for the day only should have an eye or strap to lash it to.',
    observed: 'Unsecured items were found {location}: {item}.',
    consequence:
      'In a knock-down or collision heavy things become missiles, and boards fly up from over the tanks.',
    recommendation:
      'Fit turn-buttons or catches to boards and lockers, and chocks with straps for heavy gear, strong enough to hold it upside down.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use for a cooker, battery or gas bottle that can shift at sea.',
    lower: 'Next lay-up for inland use.',
    harms: ['injury', 'flooding'],
    references: [],
    worksheets: [],
    cautions: [],
    related: [
      'access-hatch-falls',
      'accommodation-handholds-missing',
      'dc-battery-unsecured',
      'gas-bottle-unsecured',
    ],
    alsoCalled: ['floorboards', 'sole boards', 'knockdown', 'battery strap'],
  },
  {
    key: 'accommodation-leak-stains',
    system: 'accommodation',
    title: 'Stained or rotten joinery from leaks',
    lookFor:
      'Look behind cushions and books and at the bottoms of bulkheads, chain plates and window corners. Press veneer with a thumb and smell it. Old stains are dry, pale at the edge and do not feel cold; fresh ones are dark and soft. Trace the water upward; it travels far.',
    observed: 'Stained and soft joinery was found {location}, {extent}.',
    consequence:
      'The leak has been there some time; bulkheads that carry chain plates may be rotten through.',
    recommendation:
      'Find and cure the leak first, dry out, replace soft plywood. A bulkhead that carries load needs a shipwright.',
    urgency: 'next-layup',
    raise: 'Within days at a chain-plate bulkhead or mast support.',
    lower: 'A note for an old dry stain.',
    harms: ['deterioration', 'structural-failure'],
    references: [],
    worksheets: ['moisture-map'],
    cautions: [],
    related: [
      'deck-window-leaking',
      'deck-hull-joint-leaking',
      'hull-framing-detached',
      'rig-chainplate-structure-moved',
    ],
    alsoCalled: ['water stains', 'veneer', 'plywood rot', 'drips'],
  },
  {
    key: 'accommodation-damp-mould',
    system: 'accommodation',
    title: 'Damp, mould and poor ventilation below',
    lookFor:
      'Look behind mattresses, in hanging lockers and in corners without air. Open every ventilator and see whether it passes air. Distinguish condensation, which is even and in cold corners, from a leak, which has a run and a place.',
    observed: 'Mould was found {location}, {extent}; {count} ventilators were shut or blocked.',
    consequence:
      'Damp air harms people who sleep there and rots joinery; poor air with a heater on can also suffocate.',
    recommendation:
      'Clear the ventilators so that air comes in low and leaves high, insulate cold corners, and ventilate each locker. Solve leaks separately.',
    urgency: 'next-layup',
    raise: 'Within days where a stove or heater burns inside without enough fixed ventilation.',
    lower: 'A note for a boat shut up for the winter.',
    harms: ['deterioration', 'poisoning'],
    references: [],
    worksheets: [],
    cautions: [closedSpaces, 'Mould dust irritates lungs: wear a mask and do not brush it dry.'],
    related: ['accommodation-leak-stains', 'gas-heater-unflued', 'fire-heater-flue', 'fire-co-alarm-missing'],
    alsoCalled: ['mildew', 'condensation', 'mold'],
  },
  {
    key: 'accommodation-handholds-missing',
    system: 'accommodation',
    title: 'Handholds missing or pulled loose below',
    lookFor:
      'Go from cockpit to forepeak with eyes nearly shut and see where the hand falls. Pull hard at each rail and pillar. Look at screws into thin veneer or lining that cannot hold. Galley and companion count most.',
    observed: 'Handholds {location} are missing or loose; {item} came away when pulled.',
    consequence: 'People fall across the cabin when she rolls, or grab what does not hold.',
    recommendation: 'Fit rails through-bolted to structure within each arm’s reach of the next.',
    urgency: 'next-layup',
    raise: 'Within days for boats going offshore or carrying guests.',
    harms: ['injury'],
    references: [],
    worksheets: [],
    cautions: ['Pull with your feet set; do not hang your weight on a rail above steps.'],
    related: ['access-steps-unsafe', 'deck-non-slip-worn'],
    alsoCalled: ['grab rails', 'handrails', 'grabrail'],
  },
  {
    key: 'accommodation-escape-blocked',
    system: 'accommodation',
    title: 'Escape hatch blocked, locked or too small',
    lookFor:
      'From each sleeping place, go out by the other way with lights off: can it be opened by one hand from inside and without tools, and does a person in clothes pass? Look for dinghies, covers and padlocks on top, bolts set from outside, and ladders in the way. Read the marking of its opening direction.',
    observed: 'The escape hatch {location} could not be opened because {item} lies on it.',
    consequence: 'Fire or flooding cuts off the usual way, and people cannot get out.',
    recommendation:
      'Keep it free and unlocked when people are below, mark it, fit a step or handhold where it is high.',
    urgency: 'before-use',
    lower: 'Within days for a hatch that works but is unmarked or stiff.',
    harms: ['fire-explosion', 'injury'],
    references: ['ISO 9094'],
    worksheets: [],
    cautions: ['Have someone outside when trying an escape, and do not go out on deck without a handhold.'],
    related: ['deck-hatch-not-tight', 'accommodation-stove-clearance-poor'],
    alsoCalled: ['emergency exit', 'fire exit', 'means of escape'],
  },
  {
    key: 'accommodation-stove-clearance-poor',
    system: 'accommodation',
    title: 'Heating stove or flue too near combustible material',
    lookFor:
      'Measure from stove and flue to timber, lining, bedding and curtain. Look for scorch, brown veneer and cracked insulation. Check the flue’s joints, deck fitting and air supply, and look for an alarm for carbon monoxide in each space where people sleep. Feel surfaces when it has run an hour, from a distance.',
    observed: 'The stove {location} stands {size} from {item}, which is scorched {extent}.',
    consequence:
      'Wood that is warmed again and again chars and can catch at a lower heat than fresh wood. A leaking flue gives carbon monoxide, which kills people asleep.',
    recommendation:
      'Do not light it. Have a qualified fitter set clearances, insulation, air supply and flue as the stove’s maker directs, and fit an audible carbon monoxide alarm.',
    urgency: 'before-use',
    lower: 'Within days where clearance is small but nothing is scorched and shields can be added.',
    harms: ['fire-explosion', 'poisoning'],
    references: ['ISO 9094', 'ABYC A-7'],
    worksheets: [],
    cautions: [
      'Do not light a stove to test it before flue and air have been looked at; keep hatches open and a carbon monoxide alarm on.',
    ],
    related: ['fire-heater-flue', 'fire-co-alarm-missing', 'accommodation-damp-mould'],
    alsoCalled: ['solid-fuel stove', 'heater', 'flue', 'chimney', 'CO alarm'],
  },
);
