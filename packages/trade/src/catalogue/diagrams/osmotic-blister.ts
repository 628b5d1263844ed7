import { arc, area, drops, flaw, outlineOf } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, type Point, shape } from '../../drawing/panels.ts';
import { muted } from '../../drawing/style.ts';

// The laminate below the water line, cut; the sea is below it. Its lower face at y = 84.
const gelcoat = (from: number, to: number, top: number): string =>
  shape(`M${from} ${top} H${to} V${top + 7} H${from} Z`, muted);

/** A shallow dish in the lower face, from the left edge to the right. */
const dish = (half: number): Point[] => arc([75, 84 + half * 0.75], half * 1.25, 217, 323);

const laminate = (half: number): string => {
  const edge = dish(half);
  const [left, right] = [edge[0]?.[0] ?? 0, edge.at(-1)?.[0] ?? 0];
  return cut([
    [3, 34],
    [147, 34],
    [147, 84],
    [right, 84],
    ...edge.slice(1, -1).reverse(),
    [left, 84],
    [3, 84],
  ]);
};

export const osmoticBlister = asFoundAndAsItShouldBe({
  key: 'osmotic-blister',
  title: 'Osmotic blister, and its repair',
  description:
    'The laminate of a bottom, cut, the sea below it. As found: acid fluid has gathered in a cavity of the laminate and lifted the gelcoat into a dome, which is cracked and weeps. As it should be: opened and ground back to sound laminate, washed and dried to a measured level, filled, faired, and the whole bottom coated with a barrier.',
  asFound: {
    shapes: [
      laminate(22),
      gelcoat(3, 50, 84),
      gelcoat(100, 147, 84),
      area(outlineOf([...dish(22), [100, 86], [90, 100], [75, 105], [60, 100], [50, 86]])),
      shape('M50 84 Q58 105 75 105 Q92 105 100 84 V91 Q92 113 75 113 Q58 113 50 91 Z', muted),
      flaw('M84 103 L87 106 L85 108 L88 111'),
      drops(91, 116, 2),
      note('Fluid', 75, 91, 'middle'),
      note('Laminate', 75, 24, 'middle'),
      arrow([22, 112], [22, 93]),
      note('Gelcoat', 8, 124),
      note('Sea', 128, 142),
    ],
    caption: ['Gelcoat lifted by fluid', 'from the laminate'],
  },
  asItShouldBe: {
    shapes: [
      laminate(32),
      cut([...dish(32), [102, 91], [48, 91]], 3),
      gelcoat(3, 48, 84),
      gelcoat(102, 147, 84),
      shape('M3 91 H147 V97 H3 Z'),
      note('Laminate', 75, 24, 'middle'),
      arrow([56, 116], [66, 86]),
      note('Filler', 44, 127),
      arrow([112, 116], [112, 99]),
      note('Barrier', 98, 127),
      note('Sea', 128, 142),
    ],
    caption: ['Ground back, dried, filled,', 'coated all over'],
  },
});
