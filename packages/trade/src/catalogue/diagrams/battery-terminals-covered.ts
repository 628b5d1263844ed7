import { battery, cable, sparks } from '../../drawing/electrics.ts';
import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, note, shape, thin } from '../../drawing/panels.ts';
import { hairline, signal } from '../../drawing/style.ts';

const lug = (x: number, out: number, lift: number): string =>
  placed(
    x,
    88 - lift,
    out * -lift,
    shape(`M${out * -9} -4 H${out * 18} V0 H${out * -9} Z`),
    shape(`M${out * 16} -6 H${out * 27} V2 H${out * 16} Z`),
    shape('M-6 -11 H6 V-4 H-6 Z'),
    thin('M-2 -11 v7 M2 -11 v7'),
  );
const leads = [cable('M10 86 Q-2 86 -8 110', 7), cable('M140 86 Q152 86 158 110', 7)];
const body = placed(75, 150, 0, battery(128, 56));

export const batteryTerminalsCovered = asFoundAndAsItShouldBe({
  key: 'battery-terminals-covered',
  title: 'Battery terminals loose and bare, and booted',
  description:
    'A battery seen from the side with its two cables. As found, the posts are bare, one terminal is loose, and a spanner laid across both posts shorts the battery with sparks. As it should be, both terminals are tight and covered by insulating boots that also cover the ends of the cables.',
  asFound: {
    shapes: [
      body,
      ...leads,
      lug(43, -1, 0),
      lug(107, 1, 4),
      // A ring spanner dropped across both nuts.
      placed(
        76,
        70,
        -4,
        shape(
          'M-46 -4 Q-46 -8 -41 -8 Q-35 -8 -34 -4 H32 Q34 -9 41 -9 L46 -6 H40 V0 H46 L41 3 Q34 3 32 0 H-34 Q-35 4 -41 4 Q-46 4 -46 0 Z',
          hairline,
        ),
      ),
      sparks([42, 70], 8, signal),
      sparks([110, 66], 8, signal),
      flaw('M98 91 q4 2 8 0'),
      note('Spanner across', 75, 28, 'middle'),
      arrow([75, 34], [75, 60], true),
      note('Bare, loose', 75, 136, 'middle'),
    ],
    caption: ['A short melts metal and can', 'burst the battery'],
  },
  asItShouldBe: {
    shapes: [
      body,
      ...leads,
      lug(43, -1, 0),
      lug(107, 1, 0),
      placed(43, 94, 0, shape('M-13 0 V-12 Q-13 -26 0 -26 Q13 -26 13 -12 V0 Z', hairline)),
      placed(107, 94, 0, shape('M-13 0 V-12 Q-13 -26 0 -26 Q13 -26 13 -12 V0 Z', hairline)),
      shape('M8 80 H31 V94 H8 Z M119 80 H142 V94 H119 Z', hairline),
      note('Insulating boots', 75, 36, 'middle'),
      arrow([62, 42], [51, 65]),
      arrow([88, 42], [99, 65]),
      note('Tight, covered', 75, 136, 'middle'),
    ],
    caption: ['Every live terminal tight', 'and under a boot or lid'],
  },
});
