import { entries } from '../entry.ts';

export const gasPipingEntries = entries(
  {
    key: 'gas-pressure-gauge-missing',
    system: 'gas',
    title: 'No pressure gauge in the gas system, so no leak-down test',
    lookFor:
      'Look beside the bottle for a gauge on the bottle side of the regulator, in the locker, before the first shut-off. With it the leak-down test is done: appliances off, any remote shut-off valve open, bottle valve open, read the gauge, shut the bottle valve, and read again after at least three minutes, or longer where the rules say so. The reading must not fall. A gauge stuck at one figure with the bottle shut and a burner lit tests nothing.',
    observed:
      'There is no pressure gauge in the gas system {location}. A leak-down test could not be made by those aboard.',
    consequence:
      'A small leak goes unnoticed until it is smelt. The crew has no quick way to prove the system tight after changing a bottle.',
    recommendation:
      'Have a licensed gas fitter fit a gauge on the high-pressure side, before the regulator, and test the whole system. Then make the leak-down test at each change of bottle and at the start of each season, and write the readings down. Find a leak only with a leak-detecting fluid free of ammonia.',
    urgency: 'within-days',
    withinDays: 60,
    raise: 'Before use when gas is smelt, or when a fitter’s test shows a fall in pressure.',
    harms: ['fire-explosion'],
    references: ['ABYC A-1', 'ISO 10239'],
    worksheets: ['gas-leak-down'],
    cautions: [
      'Never look for a leak with a flame.',
      'Use no solution that contains ammonia: it can crack brass fittings. Many household cleaners contain it.',
      'A falling gauge means: bottle shut, no switches, air the boat, and no gas until a fitter has found the leak.',
      'The test doesn’t prove what lies beyond a shut appliance valve, and a change of temperature moves the gauge with no leak.',
    ],
    related: ['gas-leak-found', 'gas-regulator-corroded', 'gas-hose-out-of-date'],
    diagram: 'gas-pressure-gauge',
    alsoCalled: ['manometer', 'leak test', 'pressure hold', 'LPG gauge', 'bubble tester'],
  },
  {
    key: 'gas-leak-found',
    system: 'gas',
    title: 'Gas system does not hold its pressure',
    lookFor:
      'Pressurise with the appliances off, shut the bottle and watch the gauge for at least three minutes. Note the temperature of the piping at both readings: a trapped volume that cools reads lower without leaking. Repeat a doubtful test. Liquid gas in the line hides a leak, because it keeps the pressure up as it boils.',
    observed:
      'With the appliances off and the bottle shut the pressure fell by {reading} during the test. The leak was traced to {item}.',
    consequence: 'Gas is escaping, possibly inside the boat, where it collects low down and can explode.',
    recommendation:
      'Shut the bottle, disconnect it and do not use gas. Have a licensed gas fitter find and repair the leak and certify the whole system tight before the bottle is connected again.',
    urgency: 'before-use',
    harms: ['fire-explosion'],
    references: ['ISO 10239', 'ABYC A-1'],
    worksheets: ['gas-leak-down'],
    cautions: [
      'Never a flame, no ammonia-based solution. Leak-detecting fluid only.',
      'With gas in the boat: no switches, no engine, no bilge pump, everyone off, hatches open.',
    ],
    related: ['gas-pressure-gauge-missing', 'gas-hose-out-of-date', 'gas-pipe-unprotected'],
    alsoCalled: ['leak-down failed', 'pressure drop', 'smell of gas'],
  },
  {
    key: 'gas-hose-out-of-date',
    system: 'gas',
    title: 'Flexible gas hose perished or past its date',
    lookFor:
      'Read the date and the standard printed along the hose; bend it gently and look for fine cracks, hardness, a tacky surface and bulges at the ends. Ends should be made with fittings meant for gas hose. A hose with no date at all is treated as old. Hoses to gimballed cookers wear where they swing.',
    observed: 'The flexible gas hose {location} is marked {date} and is cracked {extent}.',
    consequence:
      'Rubber hardens with age and cracks at the bends and under its clips. The hose is the commonest place for a boat’s gas system to start leaking.',
    recommendation:
      'Have a licensed gas fitter renew the hose with one marked for LPG, in the shortest practicable length, and test the system. Renew again at the interval given by the maker or by local rules.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before use when cracks open on bending, or the hose leaks, chafes or passes through a bulkhead unprotected.',
    lower: 'At the next lay-up when it is sound, leak-tight and only just past its date.',
    harms: ['fire-explosion'],
    references: ['ISO 10239', 'ABYC A-1', 'EN 16436'],
    worksheets: ['gas-leak-down'],
    cautions: [
      'Shut the bottle before handling the hose. A stiff hose can part at its fitting when bent: do not force it.',
    ],
    related: ['gas-regulator-corroded', 'gas-pressure-gauge-missing', 'gas-pipe-unprotected'],
    alsoCalled: ['orange hose', 'pigtail', 'LPG tubing'],
  },
  {
    key: 'gas-regulator-corroded',
    system: 'gas',
    title: 'Gas regulator rusted or of a kind not meant for boats',
    lookFor:
      'Read the date, outlet pressure and gas on the body; compare the pressure with the plates of the appliances. Look for rust, salt and a vent hole facing up or blocked. It should be fixed high on the locker’s side so that no strain or liquid comes on it. Surface bloom on a bracket is harmless; scaling of the diaphragm housing is not.',
    observed: 'The gas regulator {location} is dated {date} and is corroded {extent}.',
    consequence:
      'A regulator that fails passes full bottle pressure to hoses and burners made for a few tens of millibars, or leaks through its diaphragm into the locker.',
    recommendation:
      'Have a licensed gas fitter renew it with a marine regulator of the pressure the appliances are marked for, and test the system.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when flames lift, roar or sink, or when the pressure does not match the appliances.',
    harms: ['fire-explosion'],
    references: ['ISO 10239', 'ABYC A-1', 'EN 16129'],
    worksheets: ['gas-leak-down', 'gas-locker'],
    cautions: ['Do not open or adjust a regulator: it is tested and set by a fitter with a gauge.'],
    related: ['gas-hose-out-of-date', 'gas-pressure-gauge-missing'],
    alsoCalled: ['reducing valve', 'reducer', 'caravan regulator'],
  },
  {
    key: 'gas-pipe-unprotected',
    system: 'gas',
    title: 'Gas pipe chafed, unsupported or jointed out of sight',
    lookFor:
      'Follow the pipe by eye and mirror from the locker to each appliance. It should be clipped closely, high where it can be, clear of wiring, hot parts and moving gear, and in a sleeve through each bulkhead. Look for green or black marks and flats worn on copper, joints where no joint is needed, and fittings of mixed makes. Old tool marks alone are no fault.',
    observed: 'The gas pipe {location} is chafed and insufficiently supported {extent}.',
    consequence:
      'A copper pipe that moves hardens, wears through or cracks at the fitting. A joint in a closed space leaks where nobody smells it.',
    recommendation:
      'Have a licensed gas fitter clip, sleeve or reroute the pipe, take out needless joints and test the system.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before use when the pipe is flattened, cracked or worn visibly thin, or lies against a live conductor.',
    harms: ['fire-explosion'],
    references: ['ISO 10239', 'ABYC A-1'],
    worksheets: ['gas-leak-down'],
    cautions: ['Do not pull on a pipe to test its clips with the bottle open.'],
    related: ['gas-leak-found', 'dc-wiring-unsupported'],
    diagram: 'bulkhead-chafe',
    alsoCalled: ['copper gas line', 'LPG tubing', 'grommet missing'],
  },
);
