import { entries } from '../entry.ts';
import { machineryStopped } from '../shaft-propeller/cautions.ts';

/** What tells the engine what to do, and tells the helmsman how it is. */
export const engineControlEntries = entries(
  {
    key: 'engine-control-cables-worn',
    system: 'engine',
    title: 'Throttle or gear cable stiff, kinked or badly fastened',
    lookFor:
      'With the engine stopped, move the lever through its travel and watch the far ends with a helper: each must reach its stop both ways, ahead, neutral and astern. Look for split or bulging jackets, rusty end rods, tight bends, cables tied to hot parts, clamps that have let go and end fittings without a split pin. A stiff lever may be the control head; unhook the cable to tell.',
    observed:
      'The {side} control cables were stiff or their jackets split {location}. At the engine {item} was loose or not locked.',
    consequence:
      'A cable that jams or comes off leaves the engine in gear or at its last speed, most often in harbour where the lever is used most.',
    recommendation:
      'Have a marine engineer renew both cables together, led in wide bends away from heat, fasten their ends with locked fittings and adjust the travel.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when gear or neutral is not surely found, or an end can come off.',
    lower: 'At the next lay-up when they are old and stiff but reach their stops and are locked.',
    harms: ['loss-of-control', 'injury'],
    references: ['ABYC P-14'],
    worksheets: [],
    cautions: [
      machineryStopped,
      'Some gearboxes must not be shifted with the engine stopped: turn the shaft by hand or look at the lever only.',
    ],
    related: ['engine-neutral-start', 'engine-gearbox-oil-burnt'],
    alsoCalled: ['push-pull cable', 'shift cable', 'throttle cable', 'single lever'],
  },
  {
    key: 'engine-gearbox-oil-burnt',
    system: 'engine',
    title: 'Gearbox slips, leaks, or its oil is burnt or milky',
    lookFor:
      'Draw the dipstick and smell: burnt oil is dark and sharp, milky oil has met water from its cooler. Look at both shaft seals and the cooler for oil and rust. On trial, shift at idle: each way should take up within a second or two without a bang; then with lines doubled, see that revolutions and thrust rise together. Note whether she creeps in neutral.',
    observed:
      'The oil of the {side} gearbox looked and smelt wrong on its dipstick: {item}. Engagement took {reading}.',
    consequence:
      'Burnt oil means slipping plates, milky oil a holed cooler. Either ends in loss of drive, usually without much warning.',
    recommendation:
      'Have a marine engineer find the cause, pressure-test the cooler, change oil and filter, and adjust the cable before the gearbox itself is opened.',
    urgency: 'within-days',
    withinDays: 30,
    raise: 'Before use when it slips under load, engages by itself, or the oil is milky.',
    lower: 'At the next lay-up for a slight weep at a seal with clean oil at its mark.',
    harms: ['loss-of-control', 'deterioration', 'pollution'],
    references: [],
    worksheets: ['engine-readings'],
    cautions: [machineryStopped, 'Test in gear only with lines doubled and nobody near the propeller.'],
    related: ['engine-control-cables-worn', 'shaft-misaligned', 'engine-oil-leak'],
    alsoCalled: ['transmission', 'reduction gear', 'oil cooler', 'clutch slipping', 'reverse gear'],
  },
  {
    key: 'engine-alarms-dead',
    system: 'engine',
    title: 'Engine alarms or gauges dead or not to be believed',
    lookFor:
      'Turn the key without starting: oil lamp and buzzer must come on and go out once it runs. Ground the sender of the temperature alarm, where its maker allows, and listen at the helm with hatches shut. Compare gauges with a thermometer on the thermostat housing and with a tachometer held to the shaft or pulley. An hour meter that does not turn says nothing of hours.',
    observed:
      'At the helm {location} {item} gave no sign when tested. The gauge stood at {reading} against a measured {size}.',
    consequence:
      'Cooling or oil is lost in seconds and the engine with it in minutes. Without an alarm nobody looks at a gauge in time.',
    recommendation:
      'Have the senders, wiring and panel repaired and proved by test, and an alarm on exhaust temperature added where there is none.',
    urgency: 'within-days',
    withinDays: 30,
    raise:
      'Before use on a boat handled alone or far from help, or when both oil and temperature alarms are dead.',
    lower: 'A note when only the hour meter or a lamp is out.',
    harms: ['loss-of-control', 'deterioration', 'fire-explosion'],
    references: [],
    worksheets: ['engine-readings'],
    cautions: [
      machineryStopped,
      'Measuring on a running engine: keep off belts and pulleys and stay out of hot steam from a filler cap.',
    ],
    related: ['engine-cooling-flow', 'engine-belts-guards', 'engine-smoke-overload'],
    alsoCalled: [
      'buzzer',
      'oil pressure alarm',
      'temperature gauge',
      'tachometer',
      'rev counter',
      'hour meter',
    ],
  },
);
