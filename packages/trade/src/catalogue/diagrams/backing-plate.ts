import { bolt, flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, shape } from '../../drawing/panels.ts';

const cleat = [
  shape('M38 40 Q34 46 34 56 H60 Q60 50 64 48 H86 Q90 50 90 56 H116 Q116 46 112 40 Z'),
  shape('M8 33 Q8 29 14 29 Q44 36 75 36 Q106 36 136 29 Q142 29 142 33 Q136 41 114 43 H36 Q14 41 8 33 Z'),
];
export const backingPlate = asFoundAndAsItShouldBe({
  key: 'backing-plate',
  title: 'Mooring cleat without and with a backing plate',
  description:
    'A mooring cleat bolted through a deck, cut through its bolts. As found: only small washers under the nuts; under load the deck lifts and cracks round the bolts and the washers pull into the laminate. As it should be: a thick plate under both bolts spreads the load over the laminate and lies flat against it.',
  asFound: {
    shapes: [
      cut([
        [3, 64],
        [24, 62],
        [44.5, 56],
        [44.5, 66],
        [26, 72],
        [3, 74],
      ]),
      cut([
        [49.5, 56],
        [100.5, 56],
        [100.5, 66],
        [49.5, 66],
      ]),
      cut([
        [105.5, 56],
        [126, 62],
        [147, 64],
        [147, 74],
        [124, 72],
        [105.5, 66],
      ]),
      ...cleat,
      placed(47, 42, 0, bolt(34, 7)),
      placed(103, 42, 0, bolt(34, 7)),
      flaw(
        'M30 60 L33 64 L31 67 L34 70 M120 60 L117 64 L119 67 L116 70 M56 66 L58 61 L62 59 M94 66 L92 61 L88 59',
      ),
      arrow([75, 26], [75, 6], true),
      note('Pull', 82, 14),
      arrow([75, 108], [56, 74]),
      arrow([75, 108], [94, 74]),
      note('Washers pull in,', 75, 120, 'middle'),
      note('deck cracks', 75, 131, 'middle'),
    ],
    caption: ['Small washers: all the load', 'at two spots'],
  },
  asItShouldBe: {
    shapes: [
      cut([
        [3, 56],
        [44.5, 56],
        [44.5, 66],
        [3, 66],
      ]),
      cut([
        [49.5, 56],
        [100.5, 56],
        [100.5, 66],
        [49.5, 66],
      ]),
      cut([
        [105.5, 56],
        [147, 56],
        [147, 66],
        [105.5, 66],
      ]),
      ...cleat,
      shape('M18 66 H132 V75 H18 Z'),
      placed(47, 42, 0, bolt(43, 8)),
      placed(103, 42, 0, bolt(43, 8)),
      arrow([75, 26], [75, 6]),
      note('Pull', 82, 14),
      arrow([75, 108], [75, 77]),
      note('Plate spreads the load', 75, 120, 'middle'),
      note('well past the bolts', 75, 131, 'middle'),
    ],
    caption: ['One stiff plate, flat', 'against the laminate'],
  },
});
