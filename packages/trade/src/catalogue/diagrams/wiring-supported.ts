import { conductor } from '../../drawing/electrics.ts';
import { flaw } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, note, shape, waterline } from '../../drawing/panels.ts';

const terminals = [16, 28, 40, 52, 64];
const board = [
  shape('M6 6 H76 V30 H6 Z'),
  ...terminals.map((x) => shape(`M${x - 4} 24 H${x + 4} V32 H${x - 4} Z`) + circle(x, 15, 4)),
];

// Wires come down the bulkhead together, dip below the board and rise to their terminals.
const runs = terminals.map((x, at) => {
  const [down, bottom, r] = [136 - at * 4, 116 - at * 5, 22 - at * 3];
  return conductor(
    `M${down} -2 V${bottom - r} Q${down} ${bottom} ${down - r} ${bottom} H${x + r} Q${x} ${bottom} ${x} ${bottom - r} V32`,
  );
});
const clip = (y: number): string =>
  shape(`M116 ${y} H140 V${y + 7} H116 Z`) + shape(`M140 ${y + 1} H147 V${y + 6} H140 Z`);

export const wiringSupported = asFoundAndAsItShouldBe({
  key: 'wiring-supported',
  title: 'Wiring in a tangle, and clipped, labelled and led with a drip loop',
  description:
    'A distribution board on a bulkhead with its wires. As found, they hang on their terminals in a tangle down to the bilge water, unmarked, one chafed and one loose. As it should be, they come down side by side in clips, dip below the board so that water drips off, and each carries a label.',
  asFound: {
    shapes: [
      waterline(128),
      conductor('M16 32 C16 80 60 70 54 104 S20 140 46 136 S130 120 96 92 S116 30 122 -2'),
      conductor('M28 32 C30 60 90 50 84 84 S30 90 26 112 S60 146 84 130 S120 60 108 -2'),
      conductor('M40 32 C36 62 10 70 14 96 S90 120 112 106 S100 40 140 34 S146 10 136 -2'),
      conductor('M52 32 C56 58 22 66 34 88 S110 96 104 62 S128 20 128 -2'),
      conductor('M70 44 C78 60 98 72 74 96 S64 130 86 136 S138 124 132 96 S136 30 116 -2'),
      ...board,
      flaw('M71 45 L66 39 M71 45 L71 37'),
      flaw('M111 99 l4 3 M113 103 l5 1 M115 96 l3 4'),
      note('Loose', 79, 22),
      arrow([88, 28], [74, 39], true),
      note('Chafed', 117, 145),
      arrow([136, 132], [118, 108], true),
    ],
    caption: ['Hangs on its terminals; no', 'wire can be told from another'],
  },
  asItShouldBe: {
    shapes: [
      waterline(128),
      ...runs,
      ...terminals.map((x, at) => shape(`M${x - 4.5} ${50 + (at % 2) * 5} h9 v12 h-9 Z`)),
      ...board,
      clip(18),
      clip(58),
      note('Clips', 84, 50),
      arrow([98, 55], [113, 61]),
      note('Labels', 76, 74),
      arrow([80, 64], [70, 59]),
      note('Drip loop', 54, 144),
      arrow([92, 132], [92, 119]),
    ],
    caption: ['Clipped at short intervals,', 'marked at both ends, dry'],
  },
});
