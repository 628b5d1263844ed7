import { gasBottle } from '../../drawing/fittings.ts';
import { asFoundAndAsItShouldBe, circle, cut, note, shape, thin, tube } from '../../drawing/panels.ts';
import { ink } from '../../drawing/style.ts';

const system = [
  cut([
    [6, 26],
    [11, 26],
    [11, 125],
    [92, 125],
    [92, 72],
    [97, 72],
    [97, 130],
    [6, 130],
  ]),
  cut([
    [92, 26],
    [97, 26],
    [97, 62],
    [92, 62],
  ]),
  shape('M4 20 H99 V26 H4 Z'),
  gasBottle(30, 125, 32, 46),
  tube('M30 77 V67 Q30 64 34 64 H74', 5),
  // Low-pressure pipe through its gland in the locker's wall, down to the cooker.
  tube('M84 67 H124 V92', 5),
  shape('M89 62 H100 V72 H89 Z'),
  shape('M72 64 H86 V70 H72 Z'),
  shape('M69 58 Q79 53 89 58 V64 H69 Z'),
  circle(79, 56, 2),
  note('Regulator', 70, 84, 'middle'),
  shape('M104 96 H144 V130 H104 Z'),
  thin('M109 107 H139 V125 H109 Z'),
  shape('M113 92 H135 V96 H113 Z'),
  note('Cooker', 124, 143, 'middle'),
];

export const gasPressureGauge = asFoundAndAsItShouldBe({
  key: 'gas-pressure-gauge',
  title: 'Gas system without and with a pressure gauge',
  description:
    'A gas bottle in its locker, the regulator and the pipe to a cooker. As found: nothing shows whether the pipes hold pressure. As it should be: a pressure gauge on the bottle side of the regulator, inside the locker. With every tap at the appliances closed, the bottle valve is opened and closed again; the needle must stand still.',
  asFound: { shapes: system, caption: ['No gauge: a leak', 'stays unseen'] },
  asItShouldBe: {
    shapes: [
      ...system,
      shape('M53 62 H57 V53 H53 Z'),
      circle(55, 43, 11),
      thin('M48.5 48 A8 8 0 1 1 61.5 48'),
      thin('M55 43 L60 37'),
      circle(55, 43, 1, ink),
      note('Gauge', 14, 47),
    ],
    caption: ['Bottle opened, then closed:', 'the needle must stand still'],
  },
});
