import { gasBottle, vapour } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, course, cut, note, tube, waterline } from '../../drawing/panels.ts';

const locker = (left: number, right: number, top: number, bottom: number, hole: number): string =>
  cut([
    [left, top],
    [left + 5, top],
    [left + 5, bottom - 5],
    [hole - 4, bottom - 5],
    [hole - 4, bottom],
    [left, bottom],
  ]) +
  cut([
    [right, top],
    [right - 5, top],
    [right - 5, bottom - 5],
    [hole + 4, bottom - 5],
    [hole + 4, bottom],
    [right, bottom],
  ]);

const boat = [
  waterline(134, 124),
  cut([
    [131, 14],
    [125, 14],
    [122, 146],
    [128, 146],
  ]),
  locker(68, 116, 24, 76, 104),
  cut([
    [64, 18],
    [120, 18],
    [120, 24],
    [64, 24],
  ]),
  gasBottle(86, 71, 22, 34),
  locker(8, 58, 38, 94, 33),
  note('Gas locker', 92, 13, 'middle'),
  note('Stowage', 33, 32, 'middle'),
];

export const gasLockerDrainShared = asFoundAndAsItShouldBe({
  key: 'gas-locker-drain-shared',
  title: 'Gas locker drain: teed into another, and on its own',
  description:
    'A gas locker and a stowage locker that is open to the boat, beside the topside. As found: the gas locker drain is teed into the drain of the stowage locker, which lies lower, so that gas comes up into the boat through it. As it should be: each locker has its own hose and its own outlet, the gas outlet above the water line and well apart from the other.',
  asFound: {
    shapes: [
      ...boat,
      tube('M33 90 V105 Q34 110 42 111 L124 122', 8),
      tube('M104 71 V116', 8),
      vapour(17, 80, 12, 6, 5),
      vapour(38, 80, 12, 6, 5),
      course(
        [
          [104, 78],
          [104, 120],
          [96, 118],
          [48, 112],
          [33, 110],
          [33, 88],
          [33, 62],
        ],
        true,
      ),
      note('Tee', 104, 136, 'middle'),
    ],
    caption: ['Outlet blocked or under water:', 'gas comes up the other drain'],
  },
  asItShouldBe: {
    shapes: [
      ...boat,
      tube('M33 90 V105 Q34 110 42 111 L124 122', 8),
      tube('M104 71 V80 Q105 86 112 87.5 L125 90', 8),
      arrow([121, 89.5], [144, 94]),
      arrow([120, 121.5], [142, 125]),
    ],
    caption: ['Two drains, two outlets', 'well apart'],
  },
});
