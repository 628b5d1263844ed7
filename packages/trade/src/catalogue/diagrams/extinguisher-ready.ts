import { flaw } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, note, shape, thin, tube } from '../../drawing/panels.ts';
import { hairline, signal } from '../../drawing/style.ts';
import { el } from '../../drawing/svg.ts';

// A portable extinguisher on its bracket, hose to the left, gauge in front of the valve.
const extinguisher = [
  shape('M44 150 V78 Q44 60 62 58 H74 Q92 60 92 78 V150'),
  shape('M60 58 V50 H76 V58 Z'),
  tube('M60 46 H50 Q30 46 28 74 L25 108', 7),
  shape('M56 50 V34 H82 V50 Z'),
  shape('M60 34 L62 28 H104 L108 32 L104 34 Z'),
  shape('M78 46 H104 L108 42 L104 40 H82 Z'),
  shape('M40 118 H96 V127 H40 Z'),
  shape('M20 106 L30 108 L29 134 L18 132 Z'),
];

const gauge = (needle: number): string => {
  const turn = ((needle - 90) * Math.PI) / 180;
  const [x, y] = [68 + 12 * Math.cos(turn), 90 + 12 * Math.sin(turn)].map((v) => Math.round(v * 10) / 10);
  return (
    circle(68, 90, 17) +
    el('path', { d: 'M60.5 77 A15 15 0 0 1 75.5 77 L72.5 82.2 A9 9 0 0 0 63.5 82.2 Z', fill: hairline }) +
    thin('M60.5 77 L63.5 82.2 M75.5 77 L72.5 82.2') +
    el('path', { d: `M68 90 L${x} ${y}`, stroke: needle ? signal : '#10202f', 'stroke-width': 2 }) +
    circle(68, 90, 2)
  );
};

export const extinguisherReady = asFoundAndAsItShouldBe({
  key: 'extinguisher-ready',
  title: 'Extinguisher with blocked nozzle and low gauge, and ready for use',
  description:
    'A portable extinguisher on its bracket. As found, its nozzle is stopped with an insect’s nest, the gauge’s needle stands below the marked field and the safety pin and seal are gone. As it should be, the nozzle is clear, the needle stands in the marked field and the pin is sealed.',
  asFound: {
    shapes: [
      ...extinguisher,
      gauge(-110),
      shape('M19.5 130 q-2 6 2 8 q5 3 6 -1 q2 -3 0 -5 Z', hairline),
      flaw('M20 127 L27 134 M27 127 L20 134'),
      note('Nozzle', 2, 20),
      note('blocked', 2, 31),
      arrow([10, 36], [18, 120], true),
      note('Gauge low', 102, 84),
      arrow([106, 89], [88, 91], true),
      circle(91, 31, 1.5),
      circle(91, 43, 1.5),
      note('Pin gone', 106, 16),
      arrow([112, 21], [94, 29], true),
    ],
    caption: ['It may not discharge when', 'it is needed'],
  },
  asItShouldBe: {
    shapes: [
      ...extinguisher,
      gauge(0),
      thin('M19 131 L28 132'),
      circle(91, 20, 5),
      shape('M89.5 24 H92.5 V42 H89.5 Z'),
      thin('M92 36 Q104 48 98 54'),
      shape('M94 53 h7 v6 h-7 Z', hairline),
      note('Clear', 2, 26),
      arrow([10, 31], [18, 120]),
      note('In the field', 100, 84),
      arrow([106, 89], [88, 87]),
      note('Pin, seal', 106, 16),
    ],
    caption: ['Looked at every month, and', 'serviced when its date is due'],
  },
});
