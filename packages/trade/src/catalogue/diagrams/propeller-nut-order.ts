import { placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, shape, thin } from '../../drawing/panels.ts';
import { splitPin } from '../../drawing/tackle.ts';

// Axis at y = 92. Hub in section on the tapered shaft, a blade's root above it; aft is to the right.
const hubAndShaft = [
  shape('M30 60 C26 40 30 20 38 0 H62 C66 22 64 42 66 62 Z'),
  thin('M46 4 C42 24 42 42 46 58'),
  cut([
    [18, 75],
    [18, 56],
    [72, 64],
    [72, 81],
  ]),
  cut([
    [18, 109],
    [18, 128],
    [72, 120],
    [72, 103],
  ]),
  shape('M-1 74.5 H18 L72 82 H132 L135 85 V99 L132 102 H72 L18 109.5 H-1'),
  thin('M72 84.5 H132 M72 99.5 H132'),
];

const nut = (x: number, width: number): string =>
  shape(
    `M${x} 70 Q${x} 68 ${x + 2} 68 H${x + width - 2} Q${x + width} 68 ${x + width} 70 V114 Q${x + width} 116 ${x + width - 2} 116 H${x + 2} Q${x} 116 ${x} 114 Z`,
  ) + thin(`M${x} 80 H${x + width} M${x} 104 H${x + width}`);

const pin = placed(117, 78, 0, splitPin(5, 27, 42, 18));

export const propellerNutOrder = asFoundAndAsItShouldBe({
  key: 'propeller-nut-order',
  title: 'Propeller nuts: full nut next to the hub, and thin nut next to the hub',
  description:
    'Both panels show the propeller’s hub in section on its tapered shaft with two nuts and a split pin on the thread. As found, the full nut lies against the hub and the thin lock nut outside it. As it should be, the thin lock nut lies against the hub, the full nut outside it carries the load, and the split pin is beyond it.',
  asFound: {
    shapes: [
      ...hubAndShaft,
      pin,
      nut(72, 22),
      nut(94, 12),
      note('Full nut', 72, 36),
      note('Thin nut', 110, 52),
      arrow([84, 41], [83, 64], true),
      arrow([124, 57], [103, 71], true),
      note('Hub', 24, 142),
    ],
    caption: ['The outer nut takes the load,', 'and it is the thin one'],
  },
  asItShouldBe: {
    shapes: [
      ...hubAndShaft,
      pin,
      nut(72, 12),
      nut(84, 22),
      note('Thin nut', 72, 36),
      note('Full nut', 112, 52),
      arrow([80, 41], [78, 64]),
      arrow([124, 57], [100, 71]),
      note('Hub', 24, 142),
      note('Split pin', 100, 142),
    ],
    caption: ['Thin lock nut next to the hub,', 'full nut outside, then the pin'],
  },
});
