import { area, flaw } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  course,
  cut,
  note,
  type Point,
  shape,
  thin,
} from '../../drawing/panels.ts';
import { hairline } from '../../drawing/style.ts';

// Section through a metal hull or drive, water below, with the anode bolted under it.
const plate = (dents: readonly Point[] = []): string =>
  cut([[-6, 34], [156, 34], [156, 52], ...dents, [-6, 52]]);

const stud = (x: number, bottom: number): string =>
  shape(`M${x - 3} 40 H${x + 3} V${bottom} H${x - 3} Z`) +
  shape(`M${x - 7} ${bottom - 9} H${x + 7} V${bottom - 3} H${x - 7} Z`) +
  thin(`M${x - 2.5} ${bottom - 9} v6 M${x + 2.5} ${bottom - 9} v6`);

const pits: Point[] = [
  [146, 52],
  [143, 46],
  [139, 44],
  [135, 47],
  [132, 52],
  [20, 52],
  [17, 46],
  [13, 43],
  [9, 46],
  [5, 52],
];

export const anodeContact = asFoundAndAsItShouldBe({
  key: 'anode-contact',
  title: 'Anode painted and bedded on sealant, and bare on clean metal',
  description:
    'Section through the metal to be protected with an anode bolted under it, water below. As found, the anode is painted over and bedded on sealant; it is as new and the metal beside it is pitted. As it should be, the anode is bare, sits on clean metal, and wastes in place of the metal.',
  asFound: {
    shapes: [
      plate(pits),
      area('M32 53 H118 V58 H32 Z', hairline),
      shape('M32 58 H118 L110 90 H40 Z'),
      stud(52, 97),
      stud(98, 97),
      flaw('M30.5 56 L38 92.5 H44 M60 92.5 H90 M106 92.5 H112 L119.5 56'),
      flaw('M132 53 L135 48 L139 45 L143 47 L146 53 M20 53 L17 47 L13 44 L9 47 L5 53'),
      note('Metal of the hull', 75, 26, 'middle'),
      note('As new', 75, 78, 'middle'),
      note('Paint', 20, 124, 'middle'),
      arrow([24, 113], [36, 95], true),
      note('Sealant', 114, 124, 'middle'),
      arrow([118, 113], [113, 62], true),
    ],
    caption: ['It does nothing: the metal', 'beside it wastes instead'],
  },
  asItShouldBe: {
    shapes: [
      plate(),
      shape(
        'M32 52 H118 L117 60 L114 64 L116 70 L112 76 L108 79 L101 78 L94 84 L84 82 L75 86 L66 82 L58 84 L50 80 L42 79 L37 75 L38 69 L34 64 L34 58 Z',
      ),
      stud(52, 92),
      stud(98, 92),
      course([
        [122, 82],
        [138, 80],
        [138, 56],
      ]),
      course([
        [28, 82],
        [12, 80],
        [12, 56],
      ]),
      note('Metal of the hull', 75, 26, 'middle'),
      note('Wasting', 75, 72, 'middle'),
      note('Current protects the metal', 75, 116, 'middle'),
      note('Bare, on bright metal', 75, 134, 'middle'),
    ],
    caption: ['Bare anode, bright contact:', 'next to no resistance'],
  },
});
