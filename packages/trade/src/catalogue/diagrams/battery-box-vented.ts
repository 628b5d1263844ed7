import { placed, vapour } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  course,
  cut,
  note,
  type Point,
  shape,
  thin,
  tube,
} from '../../drawing/panels.ts';

// A box under a berth, cut; the battery strapped down on its floor, terminals covered.
const piece = (left: number, right: number, top: number, bottom: number): string => {
  const corners: Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return cut(corners);
};
const box = [piece(8, 14, 42, 138), piece(14, 122, 132, 138)];

const battery = placed(
  66,
  132,
  0,
  shape('M-34 -46 H34 V0 H-34 Z'),
  shape('M-37 -52 H37 V-45 H-37 Z'),
  shape('M-31 -52 V-58 Q-31 -64 -25 -64 H-16 V-52 Z M31 -52 V-58 Q31 -64 25 -64 H16 V-52 Z'),
  shape('M-6 -55 H6 V0 H-6 Z'),
  shape('M-8 -34 H8 V-24 H-8 Z'),
  thin('M-4 -31 H4 M-4 -27 H4'),
);

export const batteryBoxVented = asFoundAndAsItShouldBe({
  key: 'battery-box-vented',
  title: 'Battery box: closed, and vented at the top',
  description:
    'A battery strapped down in its box, cut. As found: the box is closed all round; the gas given off in charging is lighter than air, collects under the lid and can explode. As it should be: a vent leads from the top of the box to the open air, and air enters through an opening low in the side.',
  asFound: {
    shapes: [
      ...box,
      piece(122, 128, 42, 138),
      piece(4, 132, 34, 41),
      vapour(18, 46, 100, 12, 5),
      battery,
      arrow([46, 22], [58, 52], true),
      note('Gas stays under the lid', 12, 18),
    ],
    caption: ['Closed all round: one spark', 'sets the gas off'],
  },
  asItShouldBe: {
    shapes: [
      ...box,
      piece(122, 128, 42, 108),
      piece(122, 128, 124, 138),
      piece(4, 61, 34, 41),
      piece(71, 132, 34, 41),
      tube('M66 41 V24 Q66 14 76 14 H147', 10),
      course([
        [66, 54],
        [66, 30],
        [66, 18],
        [72, 14],
        [86, 14],
        [142, 14],
      ]),
      battery,
      arrow([146, 116], [112, 116]),
      note('Air', 132, 108),
      note('Vent', 38, 22),
    ],
    caption: ['Vent from the top to open air,', 'air in below'],
  },
});
