import { arc, area, drops, flaw } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, type Point, shape } from '../../drawing/panels.ts';
import { muted } from '../../drawing/style.ts';

const bend: Point = [64, 70];

/** Outer wall above the water inlet, and the inner wall, cut along the pipe. */
const walls = [
  cut([
    [2, 134],
    [2, 125],
    [10, 125],
    [10, 70],
    ...arc(bend, 54, 180, 360),
    [111, 70],
    ...arc(bend, 47, 0, -180),
    [17, 134],
  ]),
  cut([
    [41, 134],
    [41, 70],
    ...arc(bend, 23, 180, 360),
    [87, 128],
    [80, 128],
    [80, 70],
    ...arc(bend, 16, 0, -180),
    [48, 125],
    [56, 125],
    [56, 134],
  ]),
  // The water inlet, a stub of pipe through the outer wall.
  cut([
    [111, 66],
    [136, 66],
    [136, 71],
    [111, 71],
  ]),
  cut([
    [118, 83],
    [136, 83],
    [136, 88],
    [118, 88],
  ]),
  shape('M2 134 H17 V141 H2 Z M41 134 H56 V141 H41 Z'),
];

const hose = [
  shape('M75 108 H80 V147 H75 Z M118 108 H123 V147 H118 Z'),
  shape('M74 115 h-3.5 v7 H74 Z M124 115 h3.5 v7 H124 Z M74 126 h-3.5 v7 H74 Z M124 126 h3.5 v7 H124 Z'),
];

const flows = [
  arrow([29, 132], [29, 96]),
  arrow([146, 77], [124, 77]),
  drops(98, 88, 4),
  drops(106, 92, 4),
  note('Gas', 29, 90, 'middle'),
  note('Water', 148, 60, 'end'),
];

export const exhaustElbowWasted = asFoundAndAsItShouldBe({
  key: 'exhaust-elbow-wasted',
  title: 'Exhaust injection elbow: wasted from inside, and sound',
  description:
    'An exhaust elbow cut along its length; hot gas comes up on the left, sea water is injected into the falling leg on the right, a hose leads on. As found: below the injection the wall is eaten away from inside to a hole, and scale narrows the way; from outside little is seen. As it should be: full wall all round and a clear bore, shown by taking it off and pressure-testing it.',
  asFound: {
    shapes: [
      ...walls,
      area('M111 72 C105 70 102 62 108 54 L111 70 Z M87 72 C95 76 94 90 88 98 L87 100 Z', muted),
      ...hose,
      cut(
        [
          [111, 83],
          [118, 83],
          [118, 97],
          [116, 97],
          [115, 93],
          [113, 90],
        ],
        3,
      ),
      cut(
        [
          [118, 101],
          [118, 128],
          [111, 128],
          [112, 120],
          [115, 112],
          [115.5, 104],
          [116.5, 101],
        ],
        3,
      ),
      ...flows,
      flaw('M113 90 L115 93 L116 97 L119 97 M119 101 L116.5 101 L115.5 104 L115 112 L112 120'),
      arrow([142, 106], [122, 100], true),
      note('Hole', 147, 99, 'end'),
      note('Scale', 64, 103, 'middle'),
    ],
    caption: ['Eaten away and scaled', 'below the water inlet'],
  },
  asItShouldBe: {
    shapes: [
      ...walls,
      ...hose,
      cut([
        [111, 83],
        [118, 83],
        [118, 128],
        [111, 128],
      ]),
      ...flows,
    ],
    caption: ['Full wall, clear bore: taken', 'off and pressure-tested'],
  },
});
