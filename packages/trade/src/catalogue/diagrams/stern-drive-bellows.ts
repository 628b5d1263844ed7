import { drops, flaw } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  circle,
  course,
  cut,
  note,
  shape,
  thin,
  tube,
  waterline,
} from '../../drawing/panels.ts';
import { hairline } from '../../drawing/style.ts';

// Section through the transom: the boat's inside to the left, the drive to the right, all below the waterline.
const folds = (y: number, out: number): string =>
  tube(
    `M50 ${y} H60 L64 ${y + out} L69 ${y} L74 ${y + out} L79 ${y} L84 ${y + out} L89 ${y} L94 ${y + out} L98 ${y} H110`,
    4,
    hairline,
  );
const drive = [
  waterline(24, 44, 150),
  cut([
    [32, -4],
    [44, -4],
    [44, 50],
    [32, 50],
  ]),
  cut([
    [32, 114],
    [44, 114],
    [44, 154],
    [32, 154],
  ]),
  shape('M30 50 H60 V56 H46 V108 H60 V114 H30 Z'),
  shape('M102 56 H112 L116 40 H152 V124 H116 L112 108 H102 V103 H108 V61 H102 Z'),
  shape('M-2 76 H66 V88 H-2 Z'),
  shape('M94 76 H152 V88 H94 Z'),
  shape('M62 72 H70 Q78 66 84 74 L80 80 L72 92 H62 Z'),
  shape('M98 72 H90 Q86 72 80 78 L76 84 Q80 98 90 92 H98 Z'),
  circle(80, 82, 5),
  thin('M76.5 78.5 L83.5 85.5 M83.5 78.5 L76.5 85.5'),
  folds(50, -10),
  folds(114, 10),
  shape('M51 45 H57 V49 H51 Z M102 45 H108 V49 H102 Z M51 115 H57 V119 H51 Z M102 115 H108 V119 H102 Z'),
];

export const sternDriveBellows = asFoundAndAsItShouldBe({
  key: 'stern-drive-bellows',
  title: 'Stern-drive bellows cracked in its folds, and pliant',
  description:
    'Section through the transom of a boat with a stern drive; a rubber bellows below the waterline surrounds the drive shaft’s joint. As found, the bellows is cracked in the bottom of a fold and water runs along the shaft into the boat. As it should be, the rubber is pliant and whole and clamped at both ends.',
  asFound: {
    shapes: [
      ...drive,
      flaw('M72 36 L75 43 L72 47 M83 50 L85 44 L82 39'),
      flaw('M74 128 L76 121 L72.5 117 M80 110 L82 117 L85 119 L83 126 M92 120 L90 114'),
      course(
        [
          [78, 143],
          [78, 104],
          [62, 97],
          [8, 97],
        ],
        true,
      ),
      drops(12, 106, 3),
      note('Cracked folds', 146, 144, 'end'),
    ],
    caption: ['Water gets in: the joint', 'rusts, the boat can sink'],
  },
  asItShouldBe: {
    shapes: [
      ...drive,
      note('Clamps tight', 82, 144),
      arrow([98, 133], [105, 121]),
      note('Pliant', 62, 14),
      arrow([74, 19], [74, 36]),
    ],
    caption: ['Bent open and looked at in', 'every fold; changed by date'],
  },
});
