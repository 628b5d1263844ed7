import { arc, flaw, outlineOf, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, cut, note, shape, thin } from '../../drawing/panels.ts';
import { hairline } from '../../drawing/style.ts';
import { wire } from '../../drawing/tackle.ts';

// From above, the rudder stock at 75, 40; the quadrant's cables lie athwartships in its rim.
const quadrant = (over: number): string =>
  placed(
    75,
    40,
    -over,
    shape(outlineOf([[-10, 0], ...arc([0, 0], 62, 122, 58), [10, 0]])),
    shape(outlineOf([[-8, 20], ...arc([0, 0], 52, 114, 66), [8, 20]])),
    thin(
      `M${arc([0, 0], 59, 122, 58)
        .map(([x, y]) => `${x} ${y}`)
        .join(' L')}`,
    ),
    circle(0, 0, 13),
    circle(0, 0, 8, hairline),
  );
const structure = [
  cut([
    [138, -5],
    [155, -5],
    [155, 155],
    [138, 155],
  ]),
  cut([
    [-5, -5],
    [12, -5],
    [12, 155],
    [-5, 155],
  ]),
];
// A block set square to the quadrant's edge, on a bracket from the hull side.
const stop = (x: number, turn: number): string =>
  placed(x, 55, turn, shape('M-7 -9 H7 V9 H-7 Z', hairline), circle(0, -4, 2), circle(0, 4, 2));

export const steeringStops = asFoundAndAsItShouldBe({
  key: 'steering-stops',
  title: 'Steering quadrant without stops, and brought up by them',
  description:
    'A steering quadrant hard over, seen from above. As found, there are no stops: its corner strikes the hull and a cable leaves its groove. As it should be, the quadrant comes up against a stop bolted to the structure on each side, before cable or hull takes the load.',
  asFound: {
    shapes: [
      ...structure,
      wire('M12 101 H76'),
      wire('M92 100 L138 102'),
      quadrant(42),
      flaw('M76 101 Q86 110 95 97'),
      flaw('M131 52 l6 -5 M134 60 l4 1 M131 66 l6 6'),
      note('Strikes hull', 78, 16),
      arrow([118, 21], [131, 46], true),
      note('Cable off its rim', 34, 132),
      arrow([80, 122], [85, 109], true),
    ],
    caption: ['Cable, hull and gear take', 'the blow of the rudder'],
  },
  asItShouldBe: {
    shapes: [
      ...structure,
      wire('M12 102 H138'),
      shape('M12 44 H34 V62 H12 Z'),
      shape('M138 44 H116 V62 H138 Z'),
      quadrant(22),
      stop(34, 45),
      stop(116, -45),
      note('Stop', 94, 16),
      arrow([110, 21], [116, 41]),
      note('Cable in its rim', 34, 132),
      arrow([66, 122], [70, 105]),
    ],
    caption: ['Stops to the structure on', 'both sides take it instead'],
  },
});
