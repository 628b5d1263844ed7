import { gasBottle, vapour } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  course,
  cut,
  note,
  shape,
  tube,
  waterline,
} from '../../drawing/panels.ts';
import { ink } from '../../drawing/style.ts';

// Half a section through the after end: deck, topside, bottom and the locker hung under the deck.
const hull = cut([
  [130, 18],
  [126, 88],
  [110, 122],
  [76, 139],
  [4, 146],
  [4, 140],
  [74, 133],
  [105, 117],
  [120, 86],
  [124, 18],
]);
const deck = cut([
  [4, 18],
  [28, 18],
  [28, 24],
  [4, 24],
]);
const sideDeck = cut([
  [98, 18],
  [124, 18],
  [124, 24],
  [98, 24],
]);
const leftWall = cut([
  [28, 18],
  [33, 18],
  [33, 84],
  [28, 84],
]);
const rightWall = cut([
  [93, 18],
  [98, 18],
  [98, 84],
  [93, 84],
]);
const bottle = gasBottle(60, 79, 34, 50);

export const gasLockerDrainOverboard = asFoundAndAsItShouldBe({
  key: 'gas-locker-drain-overboard',
  title: 'Gas locker: open into the boat, and tight with its own drain',
  description:
    'Section through a gas locker under the deck. As found: the lid does not seal, holes in the floor and side are open into the boat, and leaked gas runs down and lies in the bilge. As it should be: the lid lies on a gasket, the locker is tight to the inside, and a hose falls from its floor to an outlet in the topside above the water line.',
  asFound: {
    shapes: [
      vapour(8, 117, 86, 10, 5),
      vapour(8, 127, 60, 10, 5),
      hull,
      waterline(108, 116),
      deck,
      sideDeck,
      leftWall,
      rightWall,
      cut([
        [28, 79],
        [74, 79],
        [74, 84],
        [28, 84],
      ]),
      cut([
        [88, 79],
        [98, 79],
        [98, 84],
        [88, 84],
      ]),
      shape('M27 13 L99 8 V13 L27 18 Z'),
      bottle,
      course(
        [
          [84, 40],
          [82, 62],
          [81, 84],
          [68, 110],
        ],
        true,
      ),
      note('Gas in', 8, 101),
      note('the bilge', 8, 112),
    ],
    caption: ['Lid and floor open: leaked', 'gas runs down into the boat'],
  },
  asItShouldBe: {
    shapes: [
      hull,
      waterline(108, 116),
      deck,
      sideDeck,
      leftWall,
      rightWall,
      cut([
        [28, 79],
        [78, 79],
        [78, 84],
        [28, 84],
      ]),
      cut([
        [86, 79],
        [98, 79],
        [98, 84],
        [86, 84],
      ]),
      shape('M29 15 h68 v3 h-68 Z', ink),
      shape('M25 9 H101 V15 H25 Z'),
      bottle,
      shape('M33 56 H93 V60 H33 Z'),
      tube('M82 79 V86 Q83 92 92 93.5 L124 98', 8),
      arrow([122, 97.5], [142, 100]),
      note('Gasket', 134, 10, 'end'),
      note('Own drain,', 8, 106),
      note('falling all the way', 8, 117),
    ],
    caption: ['Tight; drains overboard', 'above the water line'],
  },
});
