import { area, drops, placed, seacock } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, course, cut, note, shape, thin, tube } from '../../drawing/panels.ts';

// Section across: bottom to the left, topside to the right; the dashed line is the water outside, seen within.
const boat = [
  thin('M4 72 H147', true),
  cut([
    [3, 132],
    [147, 132],
    [147, 139],
    [3, 139],
  ]),
  note('Water line', 5, 67),
];

const bowl = (water: string): string[] => [
  shape('M8 88 H48 L44 108 Q40 116 34 116 V132 H20 V116 Q14 116 11 108 Z'),
  area(water),
  shape('M5 84 H51 V88 H5 Z'),
  shape('M34 121 H46 V129 H34 Z'),
];

export const toiletVentedLoop = asFoundAndAsItShouldBe({
  key: 'toilet-vented-loop',
  title: 'Toilet below the water line: direct hose, and vented loop',
  description:
    'A toilet whose rim lies below the water line, its discharge hose and seacock. As found: the hose goes straight to the seacock; with the seacock open the sea siphons back and overflows the bowl. As it should be: the hose rises to a loop well above the water line, heeled also, with an air valve at its top that breaks the siphon.',
  asFound: {
    shapes: [
      ...boat,
      ...bowl('M9.5 92 H46.5 L43 107 Q39.5 114.5 34 114.5 H20 Q15 114.5 12 107 Z'),
      tube('M46 125 H58 Q66 125 66 116 V92 Q66 78 80 78 H94 Q108 78 108 88 V100', 9),
      placed(108, 132, 0, seacock(0.72)),
      course(
        [
          [108, 146],
          [108, 78],
          [66, 78],
          [66, 125],
          [52, 125],
        ],
        true,
      ),
      drops(54, 92, 2),
    ],
    caption: ['The sea siphons in and', 'overflows the bowl'],
  },
  asItShouldBe: {
    shapes: [
      ...boat,
      ...bowl('M13 104 H42.5 L42 108 Q39 114.5 34 114.5 H20 Q15 114.5 12 107 Z'),
      tube('M46 125 H58 Q66 125 66 116 V44 Q66 24 86 24 Q108 24 108 44 V106', 9),
      shape('M82 12 H92 V19.5 H82 Z'),
      placed(108, 132, 0, seacock(0.72)),
      arrow([58, 16], [79, 16]),
      note('Air valve', 52, 20, 'end'),
      note('Loop', 87, 50, 'middle'),
    ],
    caption: ['Loop well above the water,', 'air valve at its top'],
  },
});
