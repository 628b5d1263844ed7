import { battery, cable } from '../../drawing/electrics.ts';
import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, note, shape, thin } from '../../drawing/panels.ts';
import { hairline } from '../../drawing/style.ts';

const sole = shape('M-2 126 H152 V134 H-2 Z');

export const batterySecured = asFoundAndAsItShouldBe({
  key: 'battery-secured',
  title: 'Battery free to shift, and held down in a tray',
  description:
    'A battery on a sole. As found, it stands loose, tips as the boat heels and drags on its cable, and acid can spill. As it should be, it stands in a tray with raised sides fastened to the sole, a strap over it is made fast to the structure on both sides, and its terminals are covered.',
  asFound: {
    shapes: [
      sole,
      thin('M40 126 V72 H108 V126 M50 72 v-6 h8 v6 M90 72 v-6 h8 v6', true),
      placed(112, 126, 14, placed(-34, 0, 0, battery(68, 54))),
      cable('M118 72 C126 34 60 44 -4 40', 5),
      flaw('M44 122 q8 -14 20 -14 M58 104 l6 4 l-5 5'),
      note('Tips when she', 6, 16),
      note('heels', 6, 27),
      note('No tray, no strap', 40, 145),
    ],
    caption: ['Breaks its leads, shorts on', 'what it meets, spills acid'],
  },
  asItShouldBe: {
    shapes: [
      sole,
      placed(74, 123, 0, battery(68, 54)),
      shape('M34 126 V104 H38 V123 H110 V104 H114 V126 Z', hairline),
      shape(
        'M49 69 V64 Q49 57 57 57 Q65 57 65 64 V69 Z M83 69 V64 Q83 57 91 57 Q99 57 99 64 V69 Z',
        hairline,
      ),
      cable('M84 62 C76 44 40 40 -4 40', 5),
      shape(
        'M22 126 V92 Q22 66 40 66 H108 Q126 66 126 92 V126 H122 V94 Q122 70 106 70 H42 Q26 70 26 94 V126 Z',
      ),
      shape('M14 120 H34 V126 H14 Z M114 120 H134 V126 H114 Z'),
      shape('M18 116 h6 v4 h-6 Z M124 116 h6 v4 h-6 Z'),
      note('Strap to structure', 62, 28),
      arrow([116, 33], [120, 70]),
      note('Tray', 14, 145),
      arrow([40, 143], [44, 127]),
    ],
    caption: ['Held every way, capsize', 'too; terminals covered'],
  },
});
