import { placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, note, shape, thin } from '../../drawing/panels.ts';
import { splitPin } from '../../drawing/tackle.ts';

// A fork over a chainplate seen on its edge; the clevis pin's axis is y = 84.
const clevisPin = shape(
  'M20 74 Q20 70 24 70 H28 V98 H24 Q20 98 20 94 Z M28 74 H110 L113 77 V91 L110 94 H28 Z',
);
const forkAndPlate = [
  shape(
    'M34 98 V40 Q34 22 50 22 V-4 H68 V22 Q84 22 84 40 V98 Q84 102 80 102 H76 Q72 102 72 98 V44 Q72 36 64 36 H54 Q46 36 46 44 V98 Q46 102 42 102 H38 Q34 102 34 98 Z',
  ),
  shape('M50 152 V66 Q50 62 54 62 H64 Q68 62 68 66 V152 Z'),
  thin('M34 74 H46 M34 94 H46 M50 74 H68 M50 94 H68 M72 74 H84 M72 94 H84', true),
  note('Chainplate', 74, 142),
];

export const splitPinOpened = asFoundAndAsItShouldBe({
  key: 'split-pin-opened',
  title: 'Split pin too thin and not opened, and opened as it should be',
  description:
    'A fork is held over a chainplate by a clevis pin with a split pin through its end. As found, the split pin is too thin for its hole, too long and not opened, and has begun to fall out. As it should be, the split pin fills its hole and both legs are cut short and opened a little to each side.',
  asFound: {
    shapes: [
      clevisPin,
      thin('M96 74 V94 M104 74 V94', true),
      placed(100, 62, 0, splitPin(3.5, 30, 52, 0)),
      ...forkAndPlate,
      note('Thin, not', 98, 30),
      note('opened', 98, 41),
      arrow([122, 46], [105, 59], true),
    ],
    caption: ['It drops out, then the', 'clevis pin, then the mast'],
  },
  asItShouldBe: {
    shapes: [
      clevisPin,
      placed(100, 70, 0, splitPin(7, 27, 43, 16)),
      ...forkAndPlate,
      note('Legs opened', 92, 41),
      arrow([126, 46], [108, 101]),
    ],
    caption: ['Fills its hole, legs short and', 'opened a little, then taped'],
  },
});
