import { area, drops, flaw } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  circle,
  course,
  cut,
  note,
  shape,
  thin,
} from '../../drawing/panels.ts';
import { hairline, muted } from '../../drawing/style.ts';

/** One skin, cut, with the hole for the shank. */
const skin = (top: number, thickness: number): string[] =>
  (
    [
      [3, 58],
      [66, 147],
    ] as const
  ).map(([left, right]) =>
    cut(
      [
        [left, top],
        [right, top],
        [right, top + thickness],
        [left, top + thickness],
      ],
      4,
    ),
  );

/** Resin filled into the core, cut. */
const filling = (left: number, right: number): string =>
  cut(
    [
      [left, 69],
      [right, 69],
      [right, 95],
      [left, 95],
    ],
    3,
  );

/** End-grain blocks of the core: fine upright lines. */
const grain = (from: number, to: number): string => {
  let d = '';
  for (let x = from; x <= to; x += 6) d += `M${x} 69 V95 `;
  return thin(d);
};

/** An eye bolt's ring and collar on the deck, its shank at x = 62. */
const eye = [
  shape('M58 46 H66 V56 H58 Z'),
  circle(62, 34, 14),
  circle(62, 34, 8),
  shape('M42 57 Q46 51 56 50 H68 Q78 51 82 57 V62 H42 Z'),
];

const nut = (y: number): string =>
  shape(`M52 ${y} H72 V${y + 3} H52 Z M56 ${y + 3} H68 V${y + 10} H56 Z`) +
  thin(`M60 ${y + 3} v7 M64 ${y + 3} v7`) +
  shape(`M59 ${y + 10} H65 V${y + 16} H59 Z`);

const shank = shape('M59 57 V106 H65 V57 Z');

export const deckFittingCore = asFoundAndAsItShouldBe({
  key: 'deck-fitting-core',
  title: 'Bolt through a cored deck: open core, and core sealed with resin',
  description:
    'A cored deck cut through an eye bolt. As found: the bolt passes through bare core, water gets in past the old bedding, wets the core and weeps brown below. As it should be: the hole was bored wide in the core and filled with thickened resin before the bolt hole was drilled, the collar is bedded in sealant, and a backing plate spreads the load.',
  asFound: {
    shapes: [
      area('M3 69 H104 Q116 74 110 84 Q106 92 98 95 H3 Z', hairline),
      grain(9, 57),
      grain(69, 144),
      thin('M104 69 Q116 74 110 84 Q106 92 98 95', true),
      ...skin(62, 7),
      ...skin(95, 7),
      shank,
      ...eye,
      nut(102),
      flaw('M58 62 V102 M66 62 V102'),
      course(
        [
          [104, 44],
          [94, 59],
          [70, 62],
          [68, 70],
          [74, 82],
          [96, 82],
        ],
        true,
      ),
      note('Water', 109, 46),
      note('Wet core', 124, 122, 'middle'),
      arrow([122, 112], [106, 90]),
      drops(46, 105, 3),
      note('Brown', 12, 124),
    ],
    caption: ['Core open at the hole:', 'it drinks and rots'],
  },
  asItShouldBe: {
    shapes: [
      grain(9, 39),
      grain(87, 144),
      ...skin(62, 7),
      ...skin(95, 7),
      filling(42, 58),
      filling(66, 84),
      shape('M39 59.5 H85 V62.5 H39 Z', muted),
      shank,
      ...eye,
      shape('M32 102 H92 V107 H32 Z'),
      nut(107),
      arrow([104, 46], [87, 59]),
      note('Bedded', 108, 46),
      arrow([108, 115], [78, 90]),
      note('Resin', 112, 119),
      note('Plate', 104, 138),
      arrow([99, 132], [84, 109]),
    ],
    caption: ['Core cut back, filled with', 'resin, then drilled'],
  },
});
