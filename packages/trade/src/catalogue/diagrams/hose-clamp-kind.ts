import { arc, drops, flaw, outlineOf, placed, springClamp, wormClamp } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  circle,
  note,
  type Point,
  shape,
  thin,
} from '../../drawing/panels.ts';

const centre: Point = [46, 114];

/** The hose on its spigot, cut across: bore, spigot and hose. */
const section = [circle(...centre, 21), circle(...centre, 14), circle(...centre, 10)];

const band = (from: number, to: number): string =>
  shape(outlineOf([...arc(centre, 24.5, from, to), ...arc(centre, 21, to, from)]));

// Hose pushed from the right over a spigot whose hidden end is dashed.
const hose = [
  shape('M3 37 H34 V65 H3 Z'),
  shape('M34 33 H147 V69 H34 Z'),
  thin('M34 37 H98 V65 H34 M58 37 V65 M78 37 V65', true),
];

export const hoseClampKind = asFoundAndAsItShouldBe({
  key: 'hose-clamp-kind',
  title: 'Spring clamp, and worm-drive clamps',
  description:
    'A hose on a spigot from the side and cut across. As found: one clamp of bent spring wire; it bears on two thin lines, loses its tension and cannot be tightened. As it should be: two worm-drive clamps of stainless steel, their bands all the way round the hose, both over the spigot.',
  asFound: {
    shapes: [
      ...hose,
      placed(56, 51, 0, springClamp(36)),
      drops(36, 72, 1),
      ...section,
      band(-62, 242),
      shape('M34.5 92.5 L28 83 L31 81 L38 91 Z M57.5 92.5 L64 83 L61 81 L54 91 Z'),
      flaw('M36 92 A24 24 0 0 1 56 92'),
      arrow([88, 84], [50, 89], true),
      note('Gap: does', 94, 85),
      note('not bear', 94, 96),
      note('Cut across', 84, 138),
    ],
    caption: ['Spring wire: cannot', 'be tightened'],
  },
  asItShouldBe: {
    shapes: [
      ...hose,
      placed(52, 51, 0, wormClamp(36)),
      placed(72, 51, 0, wormClamp(36)),
      ...section,
      band(-90, 270),
      shape('M34 89.5 L34 81 H58 V89.5 Z'),
      thin('M39 81 V89.5 M43 81 V89.5 M47 81 V89.5 M51 81 V89.5'),
      shape('M58 82 H64 V88.5 H58 Z'),
      thin('M61 82 V88.5'),
      arrow([88, 101], [71, 108]),
      note('Band bears', 94, 97),
      note('all round', 94, 108),
      note('Cut across', 84, 138),
    ],
    caption: ['Two worm-drive clamps,', 'both over the spigot'],
  },
});
