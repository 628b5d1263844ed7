import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, type Point, shape, thin } from '../../drawing/panels.ts';

// From aft: the rudder tube moulded into the bottom, cut; stock and blade whole.
const hull = [
  cut([
    [3, 74],
    [46, 74],
    [46, 18],
    [53, 18],
    [53, 82],
    [3, 82],
  ]),
  cut([
    [147, 74],
    [104, 74],
    [104, 18],
    [97, 18],
    [97, 82],
    [147, 82],
  ]),
];

/** A bush on both sides of the stock, its bore given at its top and at its bottom. */
const bush = (top: number, bottom: number, boreAbove: number, boreBelow: number): string[] =>
  [-1, 1].map((side) =>
    cut(
      [
        [75 + side * 22, top],
        [75 + side * boreAbove, top],
        [75 + side * boreBelow, bottom],
        [75 + side * 22, bottom],
      ] satisfies Point[],
      3,
    ),
  );

const blade = 'M-15 64 H15 L9 120 H-9 Z';

export const rudderBearingWorn = asFoundAndAsItShouldBe({
  key: 'rudder-bearing-worn',
  title: 'Rudder bearings: worn, and with their proper clearance',
  description:
    'A rudder from aft, its tube and bearings cut. As found: the lower bearing is worn to a funnel and the stock is worn thin where it bears, so that the blade knocks from side to side. As it should be: the stock turns freely in both bearings with the small clearance that their makers give.',
  asFound: {
    shapes: [
      ...hull,
      ...bush(18, 36, 11.5, 11.5),
      ...bush(52, 82, 11, 13.5),
      placed(75, 26, -4, thin(blade, true)),
      placed(
        75,
        26,
        4,
        shape(
          'M-10 -20 H10 V30 Q7.5 31 7.5 34 V54 Q7.5 57 10 58 V64 H-10 V58 Q-7.5 57 -7.5 54 V34 Q-7.5 31 -10 30 Z',
        ),
        shape(blade),
      ),
      flaw('M86 52 L88.5 82 M64 52 L61.5 82'),
      arrow([117, 58], [89, 68], true),
      note('Worn', 122, 62),
      arrow([106, 130], [124, 130]),
      arrow([36, 130], [20, 130]),
      note('Play', 20, 122),
    ],
    caption: ['Worn bush and stock:', 'the blade knocks'],
  },
  asItShouldBe: {
    shapes: [
      ...hull,
      ...bush(18, 36, 11.2, 11.2),
      ...bush(52, 82, 11.2, 11.2),
      placed(75, 26, 0, shape('M-10 -20 H10 V64 H-10 Z'), shape(blade)),
    ],
    caption: ['Small clearance only,', 'turning freely'],
  },
});
