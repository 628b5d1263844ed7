import { placed, vapour } from '../../drawing/fittings.ts';
import { asFoundAndAsItShouldBe, course, cut, note, shape, thin, tube } from '../../drawing/panels.ts';

// A box under a berth, cut; the battery stands on its floor, terminals up.
const box = [
  cut([
    [8, 34],
    [14, 34],
    [14, 132],
    [128, 132],
    [128, 34],
    [134, 34],
    [134, 138],
    [8, 138],
  ]),
];
const lid = cut([
  [4, 26],
  [138, 26],
  [138, 33],
  [4, 33],
]);

const battery = [
  shape('M-34 -46 H34 V0 H-34 Z'),
  shape('M-37 -52 H37 V-45 H-37 Z'),
  thin('M-34 -10 H34'),
  shape('M-28 -52 V-59 H-20 V-52 Z M28 -52 V-59 H20 V-52 Z'),
];

export const batterySecured = asFoundAndAsItShouldBe({
  key: 'battery-secured',
  title: 'Battery box: loose and closed, and held down and vented',
  description:
    'A battery in its box, cut. As found: the battery stands loose and can slide and tip, and the gas of charging, lighter than air, collects under the closed lid. As it should be: chocks hold its foot, a strap holds it down, covers insulate its posts, and a vent leads from the top of the box to the open air.',
  asFound: {
    shapes: [
      ...box,
      lid,
      vapour(18, 38, 104, 8, 5),
      placed(84, 125, 8, ...battery),
      course(
        [
          [26, 84],
          [32, 60],
          [54, 60],
        ],
        true,
      ),
      note('Tips', 20, 97),
      note('Gas stays', 30, 18),
    ],
    caption: ['Loose, and no way out', 'for the gas'],
  },
  asItShouldBe: {
    shapes: [
      ...box,
      cut([
        [4, 26],
        [104, 26],
        [104, 33],
        [4, 33],
      ]),
      cut([
        [114, 26],
        [138, 26],
        [138, 33],
        [114, 33],
      ]),
      tube('M109 33 V22 Q109 12 119 12 H147', 10),
      course([
        [109, 44],
        [109, 12],
        [142, 12],
      ]),
      placed(68, 132, 0, ...battery),
      shape('M38 80 V74 Q38 68 44 68 H52 V80 Z M98 80 V74 Q98 68 92 68 H84 V80 Z'),
      shape('M62 77 H74 V132 H62 Z'),
      shape('M60 98 H76 V108 H60 Z'),
      thin('M64 101 H72 M64 105 H72'),
      cut(
        [
          [22, 124],
          [33, 124],
          [33, 132],
          [22, 132],
        ],
        3,
      ),
      cut(
        [
          [103, 124],
          [114, 124],
          [114, 132],
          [103, 132],
        ],
        3,
      ),
      note('Vent', 80, 18),
      note('Strap', 68, 62, 'middle'),
    ],
    caption: ['Chocked, strapped, covered;', 'vented from the top'],
  },
});
