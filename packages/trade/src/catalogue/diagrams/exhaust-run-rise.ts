import {
  arrow,
  asFoundAndAsItShouldBe,
  course,
  cut,
  note,
  shape,
  thin,
  tube,
  waterline,
} from '../../drawing/panels.ts';

// The after end cut along the middle, bow to the left.
const boat = [
  waterline(96, 118),
  thin('M3 96 H118', true),
  cut([
    [3, 141],
    [92, 141],
    [115, 122],
    [121, 22],
    [127, 22],
    [121, 126],
    [94, 147],
    [3, 147],
  ]),
  cut([
    [3, 16],
    [127, 16],
    [127, 22],
    [3, 22],
  ]),
];

const engine = [
  shape('M5 90 H44 V128 H5 Z'),
  shape('M10 82 H38 V90 H10 Z'),
  thin('M10 98 H39 M10 105 H39 M10 112 H39'),
  shape('M8 128 h8 v6 h-8 Z M32 128 h8 v6 h-8 Z'),
  // Elbow on the manifold, hose down to the water lock.
  tube('M44 94 H52 Q58 94 58 100 V118 Q58 125 65 125', 9),
  shape('M63 108 H91 V136 H63 Z'),
  note('Water', 77, 120, 'middle'),
  note('lock', 77, 131, 'middle'),
];

export const exhaustRunRise = asFoundAndAsItShouldBe({
  key: 'exhaust-run-rise',
  title: 'Wet exhaust without and with a rise and a vented loop',
  description:
    'The after end of a boat cut along its length: engine below the water line, water lock, exhaust hose to the transom, cooling water to the exhaust elbow. As found: the hose runs almost level to an outlet at the water line and the cooling water goes straight to the elbow; a following sea or a siphon fills the engine. As it should be: the hose rises to a loop high under the deck before it falls to an outlet above the water, and the cooling water passes a vented loop well above the water line.',
  asFound: {
    shapes: [
      ...boat,
      ...engine,
      tube('M83 108 V98 Q83 91 90 91 L120 93', 9),
      tube('M24 82 V76 Q24 72 28 72 H46 Q50 72 50 76 V90', 4),
      course(
        [
          [142, 82],
          [130, 93],
          [92, 91],
        ],
        true,
      ),
      note('Sea runs in', 68, 78),
    ],
    caption: ['No rise, no air break:', 'sea reaches the engine'],
  },
  asItShouldBe: {
    shapes: [
      ...boat,
      ...engine,
      tube('M83 108 V46 Q83 32 95 32 Q106 32 107 46 Q109 72 120 77', 9),
      arrow([117, 76], [138, 84]),
      tube('M24 82 V48 Q24 38 37 38 Q50 38 50 48 V90', 4),
      shape('M34 30 H40 V36.5 H34 Z'),
      arrow([37, 57], [37, 43]),
      note('Vent', 37, 68, 'middle'),
      note('High', 66, 54, 'middle'),
      note('loop', 66, 65, 'middle'),
    ],
    caption: ['High loop in the exhaust,', 'vented loop in the water'],
  },
});
