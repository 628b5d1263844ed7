import { area, drops, flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, cut, note, shape, thin } from '../../drawing/panels.ts';
import { muted } from '../../drawing/style.ts';

// A hollow moulded keel cut across, its laminate hatched.
const laminate = cut([
  [8, 20],
  [17, 20],
  [34, 134],
  [106, 134],
  [123, 20],
  [132, 20],
  [113, 142],
  [27, 142],
]);
const swollen = cut([
  [8, 20],
  [17, 20],
  [26, 76],
  [18, 88],
  [20, 98],
  [30, 106],
  [34, 134],
  [106, 134],
  [123, 20],
  [132, 20],
  [113, 142],
  [27, 142],
  [22, 110],
  [11, 99],
  [9, 86],
  [17, 73],
]);

/** Punchings and offcuts lying anyhow in the cement. */
const scrap = (
  [
    [34, 56, 20],
    [58, 50, -15],
    [86, 55, 35],
    [106, 48, 80],
    [46, 76, 70],
    [72, 74, 10],
    [98, 80, -30],
    [34, 92, 40],
    [56, 98, -20],
    [82, 100, 55],
    [48, 121, 0],
    [70, 120, 30],
    [95, 119, -10],
  ] as const
).map(([x, y, turn]) => placed(x, y, turn, shape('M-7 -4 H7 V4 H-7 Z', muted), circle(0, 0, 2)));

/** Three courses of lead pigs, cut across. */
const pigs = [44, 73, 102].flatMap((top, course) =>
  [-1, 0, 1].map((column) => {
    const [middle, half] = [70 + column * (29 - course * 2.6), 13 - course * 1.2];
    return cut(
      [
        [middle - half + 2, top],
        [middle + half - 2, top],
        [middle + half, top + 25],
        [middle - half, top + 25],
      ],
      4,
    );
  }),
);

export const ballastIronScrap = asFoundAndAsItShouldBe({
  key: 'ballast-iron-scrap',
  title: 'Ballast: iron scrap in cement, and lead sealed in',
  description:
    'A hollow moulded keel cut across. As found: iron offcuts in cement, wet from above; the rust takes more room than the iron, the laminate is pushed out, cracked, and weeps brown. As it should be: lead pigs laid close and bedded in resin, laminated over so that no water reaches them; the laminate is fair.',
  asFound: {
    shapes: [
      area('M17 34 L26 76 L19 88 L21 98 L30 106 L34 134 H106 L121 34 Z'),
      thin('M19 34 Q44 38 70 34 Q96 30 121 34'),
      ...scrap,
      swollen,
      flaw('M9 88 L14 90 L12 93 L17 95 L19 94 M11 99 L16 100 L21 98'),
      drops(10, 104, 3),
      arrow([52, 8], [52, 33]),
      note('Water', 57, 16),
      arrow([40, 86], [22, 91], true),
    ],
    caption: ['Iron rusts and swells:', 'laminate bursts and weeps'],
  },
  asItShouldBe: {
    shapes: [
      area('M19 34 L34 134 H106 L121 34 Z'),
      ...pigs,
      laminate,
      cut(
        [
          [18, 28],
          [122, 28],
          [121, 36],
          [19, 36],
        ],
        3,
      ),
      arrow([70, 13], [70, 27]),
      note('Laminated over', 76, 16),
    ],
    caption: ['Lead, bedded in resin', 'and sealed in'],
  },
});
