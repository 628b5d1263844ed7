import { pinchedHands, underBoat } from '../cautions.ts';
import { entries } from '../entry.ts';

export const steeringRudderEntries = entries(
  {
    key: 'steering-rudder-bearing-play',
    system: 'steering',
    title: 'Rudder bearings worn: too much play',
    lookFor:
      'Ashore, have someone hold the tiller or wheel while you move the blade sideways and fore and aft at its foot, and watch top and bottom bearing. Measure at the blade and note where it is held. Turn it over its whole arc and feel for a stiff spot, which suggests a bent stock. Knocks felt afloat on a quartering sea say the same.',
    observed: 'The rudder moves {size} at {item} {location}, more than running play.',
    consequence:
      'Play becomes hammering. The bearing opens, the stock wears, seals leak and steering grows vague.',
    recommendation:
      'Drop the rudder and measure stock and bearings; renew the bearings to the maker’s clearance and sleeve or replace a stock that is worn. A new bearing does not cure a worn stock.',
    urgency: 'next-layup',
    raise: 'Within days where it knocks badly, leaks or binds.',
    harms: ['loss-of-control', 'flooding', 'deterioration'],
    references: ['ISO 12215-8'],
    worksheets: [],
    cautions: [underBoat, pinchedHands],
    related: [
      'steering-rudder-stock-corroded',
      'steering-rudder-gland-leaking',
      'steering-rudder-pintles-worn',
    ],
    diagram: 'rudder-bearing-worn',
    alsoCalled: ['rudder bush', 'rudder play', 'rudder bearings'],
  },
  {
    key: 'steering-rudder-blade-wet',
    system: 'steering',
    title: 'Rudder blade wet inside, cracked or weeping rust',
    lookFor:
      'After lift-out look for drips that go on, rust streaks where the stock enters and cracks along the seam of the two halves. Sound for voids and meter if it is not metal. Hold the stock and twist the blade: movement between the two means that the inner tangs have let go. Damp foam alone is common and no alarm.',
    observed: 'The rudder blade {location} is cracked along its seam {extent} and weeps rust-coloured water.',
    consequence:
      'Water reaches the welds that join the tangs to the stock; if those rust through, the blade turns on its stock and she no longer answers the helm. Frost opens the seam.',
    recommendation:
      'Drill a small drain low down and dry it out. Where rust weeps or the blade moves, open it, examine tangs and welds, and rebuild or replace.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where the blade moves on its stock.',
    lower: 'Next lay-up where it is damp but clear of rust, and firm.',
    harms: ['loss-of-control', 'deterioration'],
    references: ['ISO 12215-8'],
    worksheets: ['moisture-map', 'sounding-map'],
    cautions: [underBoat],
    related: ['steering-rudder-stock-corroded', 'steering-rudder-bearing-play'],
    alsoCalled: ['wet rudder', 'waterlogged rudder', 'rudder tangs'],
  },
  {
    key: 'steering-rudder-stock-corroded',
    system: 'steering',
    title: 'Rudder stock corroded, cracked or bent',
    lookFor:
      'Clean the stock at the bearing, at the lower hull edge and where it enters the blade. Pits with brown stain under seals and bearing show crevice corrosion in stainless steel. Look for cracks at the root with dye where a doubt stands, by a qualified hand. Turn it and watch the tip: a bent stock swings off line.',
    observed:
      'The rudder stock of {material} is pitted {location}, {extent}; the deepest pit measured {size}.',
    consequence:
      'The stock bends most where it leaves the hull, just where wet and airless seals corrode it. If it breaks there the rudder is lost, and on a spade rudder often with it the seal.',
    recommendation:
      'Drop the rudder, have the stock examined by non-destructive testing and replaced or repaired to the designer’s advice. Straightening a bent stock needs the same care.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use for any crack or a stock visibly bent.',
    lower: 'Next lay-up for surface stain that polishes off.',
    harms: ['loss-of-control', 'flooding', 'structural-failure'],
    references: ['ISO 12215-8'],
    worksheets: [],
    cautions: [underBoat],
    related: ['steering-rudder-bearing-play', 'steering-rudder-blade-wet', 'steering-rudder-gland-leaking'],
    alsoCalled: ['rudder shaft', 'crevice corrosion', 'spade rudder'],
  },
  {
    key: 'steering-rudder-gland-leaking',
    system: 'steering',
    title: 'Rudder tube or gland leaking',
    lookFor:
      'Look for drips, salt and rust below the tube, at the packing nut and at the hose joining tube to gland, with someone turning the wheel. Look at the laminate at the tube’s foot for cracks. See that it can be reached and adjusted, and that the top of an open tube stands above the waterline under way.',
    observed: 'Water enters at {item} {location} when the helm is moved.',
    consequence:
      'Slow leaks fill the stern unseen; a tube that cracks at its foot opens the hull round a moving load.',
    recommendation:
      'Repack or renew seal and hose with twin clips. Have a cracked tube foot rebuilt with laminate ashore.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before next use where the tube foot is cracked or the hose is soft.',
    lower: 'Next lay-up for an occasional drip that adjusts away.',
    harms: ['flooding', 'loss-of-control'],
    references: [],
    worksheets: [],
    cautions: [pinchedHands],
    related: ['steering-rudder-bearing-play', 'through-hull-hose-clips-poor'],
    alsoCalled: ['stuffing box', 'packing gland', 'rudder port', 'rudder stern tube'],
  },
  {
    key: 'steering-rudder-pintles-worn',
    system: 'steering',
    title: 'Pintles and gudgeons worn or loose',
    lookFor:
      'Lift the rudder by hand: it should rise only to its stop. Look at the pins for thinning, at gudgeons for elongated holes, and at fastenings inside for working. See the retaining stop or clip that keeps the rudder from jumping off. Mixed metals often show wasting at just one.',
    observed: 'The pintles {location} are worn to {size} and {item} moves on its fastenings.',
    consequence: 'A rudder that lifts or whose last fastening lets go leaves her without steering.',
    recommendation:
      'Renew pins, bushes and loose fastenings in one kind of metal, with bolts on backing plates, and fit the stop that keeps the rudder down.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before next use where a fitting is loose or has no stop.',
    lower: 'Next lay-up for slight wear with firm fastenings.',
    harms: ['loss-of-control'],
    references: ['ISO 12215-8'],
    worksheets: [],
    cautions: [underBoat],
    related: ['steering-rudder-bearing-play', 'deck-fitting-no-backing'],
    alsoCalled: ['rudder hangings', 'gudgeon', 'transom-hung rudder'],
  },
);
