import { entries } from '../entry.ts';

export const fuelLineEntries = entries(
  {
    key: 'fuel-hose-perished',
    system: 'fuel',
    title: 'Fuel hose perished or not fire-resistant',
    lookFor:
      'Read the marking: hose in an engine space should carry a fire-resistant type. Bend each hose and feel for cracks, swelling, softness and wet ends; wipe with a white cloth and smell it. Clear plastic tube and unmarked rubber are not fuel hose. A fuel stain on a sound hose may come from the joint above it.',
    observed:
      'The fuel hose {location} is perished {extent}. It carries no mark of fire-resistant hose; the date on it is {date}.',
    consequence:
      'Fuel leaks on to a hot engine. In a fire, hose of the wrong kind burns through in moments and feeds it.',
    recommendation:
      'Renew the hose with fire-resistant marine fuel hose of the right bore, ends properly clipped or with made-up fittings, clear of hot and moving parts.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when it leaks, or for any perished petrol hose.',
    lower: 'At the next lay-up for sound diesel hose that only lacks a marking.',
    harms: ['fire-explosion', 'pollution'],
    references: ['ISO 7840', 'ISO 10088', 'SAE J1527', '33 CFR 183 subpart J', 'ABYC H-24', 'ABYC H-33'],
    worksheets: [],
    cautions: [
      'Hoses under pressure spray. Engine stopped and cold, eyes protected; never feel for a leak on a running injection system with the hand.',
      'With petrol, check for vapour before anything is switched.',
    ],
    related: ['fuel-shut-off-missing', 'fuel-filter-bowl', 'fuel-fill-hose'],
    alsoCalled: ['fuel line', 'A1 hose', 'rubber fuel pipe'],
  },
  {
    key: 'fuel-shut-off-missing',
    system: 'fuel',
    title: 'No fuel shut-off that can be reached with the engine on fire',
    lookFor:
      'Find the valve at each tank outlet, work it and see that it stops the fuel. Then ask how it would be worked if the engine space were burning: from outside it, by a pull or a handle within reach, labelled. Return lines that enter below the fuel level need one too. A valve on the filter beside the engine does not serve.',
    observed:
      'The fuel supply from the tank {location} cannot be shut off from outside the engine space. The only valve found is at {item}.',
    consequence:
      'With a burning hose the tank goes on feeding the fire by gravity or siphon, and an extinguisher alone cannot put it out.',
    recommendation:
      'Fit a fire-resistant shut-off at the tank that can be worked from outside the engine space, labelled, and try it once a season.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Within 30 days or sooner with petrol and a tank higher than the engine.',
    lower:
      'At the next lay-up when the line rises above the tank, an anti-siphon device is fitted and the valve is merely stiff.',
    harms: ['fire-explosion'],
    references: ['ISO 10088', '33 CFR 183 subpart J', 'ABYC H-24', 'ABYC H-33', 'ISO 9094'],
    worksheets: [],
    cautions: [
      'A valve not worked for years may leak at its spindle once turned: have a rag and a container ready.',
    ],
    related: [
      'fuel-antisiphon-missing',
      'fuel-hose-perished',
      'fire-port-missing',
      'access-seacock-unreachable',
    ],
    alsoCalled: ['fuel cock', 'stop valve', 'emergency fuel cut-off'],
  },
  {
    key: 'fuel-filter-bowl',
    system: 'fuel',
    title: 'Fuel filter with a bare plastic or glass bowl, or loose',
    lookFor:
      'Look beneath each filter and water separator in the engine space for a metal heat shield under a clear bowl, a drain cock that is plugged, and firm support of the filter itself. Feel for fuel under the drain. A plugged metal bowl needs no shield.',
    observed: 'The fuel filter {location} has a clear bowl without a heat shield.',
    consequence:
      'A plastic or glass bowl fails within seconds in a fire and empties the fuel line into it. A shaken one leaks.',
    recommendation:
      'Fit the maker’s heat shield, or a metal-bowled filter that is rated for engine spaces; support the body and plug the drain.',
    urgency: 'within-days',
    withinDays: 90,
    raise: 'Before use with petrol, or when the bowl is cracked or leaking.',
    harms: ['fire-explosion'],
    references: ['ISO 10088', '33 CFR 183 subpart J', 'ABYC H-24', 'ABYC H-33'],
    worksheets: [],
    cautions: ['Engine stopped and cool, fuel shut, before a drain is opened. Catch what comes out.'],
    related: ['fuel-contaminated', 'fuel-hose-perished', 'fuel-shut-off-missing'],
    alsoCalled: ['water separator', 'pre-filter', 'sedimenter', 'agglomerator'],
  },
  {
    key: 'fuel-antisiphon-missing',
    system: 'fuel',
    title: 'Petrol line can siphon the tank into the boat',
    lookFor:
      'Compare the height of the fuel line with the top of the tank. Where any part is lower, there must be an anti-siphon valve at the tank, or another approved means. Look at the take-off fitting and for a maker’s mark on it. With a diesel engine below its tank, see that the shut-off can be worked instead.',
    observed:
      'The petrol supply line {location} runs below the level of the tank’s top, and no anti-siphon device was found.',
    consequence:
      'A parted or burnt hose lets the tank empty itself into the bilge without the engine running.',
    recommendation:
      'Have the line raised above the tank’s top, or an anti-siphon valve of the size the engine maker allows fitted at the tank by a competent marine engineer.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when the hose is also aged or chafed.',
    harms: ['fire-explosion', 'pollution'],
    references: ['33 CFR 183 subpart J', 'ABYC H-24', 'ISO 10088'],
    worksheets: [],
    cautions: ['Do not undo the take-off with a full tank. Petrol vapour: ventilate, no sparks.'],
    related: ['fuel-shut-off-missing', 'fuel-hose-perished'],
    alsoCalled: ['anti-syphon valve', 'gasoline siphon'],
  },
);
