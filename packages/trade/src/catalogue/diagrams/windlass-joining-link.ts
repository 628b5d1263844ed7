import { arc, flaw, outlineOf, placed } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  circle,
  note,
  type Point,
  shape,
  thin,
  tube,
} from '../../drawing/panels.ts';
import { wash } from '../../drawing/style.ts';
import { chainThrough, stations } from '../../drawing/tackle.ts';

const centre: Point = [78, 98];
const pitch = 14;
const thickness = 4.5;

// The gypsy from the side. Its teeth stand up between the pockets.
const teeth = Array.from({ length: 8 }, (_, at) =>
  placed(centre[0], centre[1], at * 45 + 8, shape('M-4 -28 L-2.5 -35 H2.5 L4 -28 Z', wash)),
);
const gypsy = [
  shape('M48 140 L62 106 H94 L108 140 Z'),
  ...teeth,
  shape(outlineOf(arc(centre, 30, 0, 360)), wash),
  circle(centre[0], centre[1], 18),
  circle(centre[0], centre[1], 6),
  thin('M60 98 H72 M84 98 H96 M78 80 V92 M78 104 V116'),
];

// The deck hides the chain where it goes below through its pipe.
const deck = [
  shape('M102 133 H130 L127 140 H105 Z'),
  shape('M-2 140 H152 V152 H-2 Z'),
  note('Gypsy', 8, 112),
  thin('M36 109 H48'),
];

const over: Point[] = [[-15, 62], ...arc(centre, 36, -90, 0), [114, 160]];
const places = stations(over, pitch);
const joining = 6;

// A shackle on its side: its pin crosses the chain's line and stands out beyond the body.
const shackle = [
  tube('M15 -11 H-5 A11 11 0 0 0 -5 11 H15', 6.5),
  shape('M9 -21 H20 V-16 H18.5 V18 H10.5 V-16 H9 Z'),
  thin('M10.5 -8 H18.5 M10.5 8 H18.5'),
];

export const windlassJoiningLink = asFoundAndAsItShouldBe({
  key: 'windlass-joining-link',
  title: 'Joining link too big for the windlass, and one of the chain’s own size',
  description:
    'As found, two lengths of chain are joined by a shackle larger than the links; it rides on top of the gypsy instead of lying in a pocket, lifts the chain off the teeth and jams. As it should be, a joining link of the chain’s own size, drawn shaded, lies in its pocket like the other links.',
  asFound: {
    shapes: [
      ...gypsy,
      chainThrough(
        stations(
          [
            [-11, 44],
            [70, 44],
          ],
          pitch,
        ),
        pitch,
        thickness,
      ),
      chainThrough(
        stations(
          [
            [104, 57],
            [113, 76],
            [115, 98],
            [115, 160],
          ],
          pitch,
        ),
        pitch,
        thickness,
      ),
      placed(86, 47, 24, ...shackle),
      flaw('M74 62 l-3 -4 M80 61 l0 -5 M68 65 l-5 -3'),
      ...deck,
      note('Joining shackle', 60, 13),
      arrow([97, 20], [92, 35], true),
    ],
    caption: ['Too big for the pocket: it', 'jams or lifts the chain off'],
  },
  asItShouldBe: {
    shapes: [
      ...gypsy,
      chainThrough(places, pitch, thickness, joining),
      ...deck,
      note('Joining link', 60, 13),
      arrow([86, 20], [77, 52]),
    ],
    caption: ['A link of the chain’s own size', 'lies in its pocket'],
  },
});
