import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, note, shape, thin, tube } from '../../drawing/panels.ts';
import { hairline, wash } from '../../drawing/style.ts';
import { wire } from '../../drawing/tackle.ts';

// A raft in its canister seen from the end, in its cradle on deck.
const raft = [
  shape('M-2 128 H152 V152 H-2 Z'),
  shape('M24 128 L34 102 H80 L90 128 Z'),
  circle(57, 78, 32),
  shape('M24 75 H90 V81 H24 Z', wash),
  // The strap from its deck eye over the canister to the release.
  tube('M16 126 L22.5 70 A35 35 0 0 1 91.8 73 L97 92', 4),
  shape('M10 124 h12 v4 h-12 Z'),
  shape('M93 90 Q98 88 101 92 L103 99 H97 Z', hairline),
];
// The release between the strap's slip and the strong point.
const release = [
  shape('M94 101 Q94 98 97 98 H109 Q112 98 112 101 V113 Q112 116 109 116 H97 Q94 116 94 113 Z'),
  circle(103, 107, 4),
  tube('M103 116 V123', 4),
  shape('M96 122 H110 V128 H96 Z'),
];

export const liferaftRelease = asFoundAndAsItShouldBe({
  key: 'liferaft-release',
  title: 'Liferaft with a hydrostatic release: painter tied to the deck, and through the weak link',
  description:
    'A canister liferaft in its cradle from the end, held by a strap to a hydrostatic release. As found, the painter is tied straight to an eye on deck, so the sinking ship drags the inflated raft down. As it should be, the painter is made fast through the weak link to the strong point under the release: it inflates the raft and then parts.',
  asFound: {
    shapes: [
      ...raft,
      ...release,
      flaw('M84 60 C112 44 130 60 132 84 V118'),
      shape('M124 124 h16 v4 h-16 Z'),
      circle(132, 120, 4),
      flaw('M129 112 q3 -4 6 0 q-3 4 -6 0 M129 107 q3 -4 6 0'),
      note('Painter tied', 92, 18),
      note('to the deck', 92, 29),
      arrow([118, 34], [120, 54], true),
      note('Hydrostatic release', 146, 144, 'end'),
    ],
    caption: ['The sinking boat drags the', 'inflated raft down with her'],
  },
  asItShouldBe: {
    shapes: [
      ...raft,
      ...release,
      wire('M84 60 C112 44 130 60 130 84 V100'),
      placed(130, 108, 0, shape('M-3.5 -8 H3.5 V8 H-3.5 Z', hairline), thin('M-3.5 -2.5 L3.5 2.5')),
      wire('M130 116 C130 124 120 126 110 125'),
      note('Painter', 100, 18),
      arrow([118, 23], [116, 50]),
      note('Weak link', 104, 144),
      arrow([138, 134], [132, 119]),
    ],
    caption: ['Release frees the strap, the', 'weak link parts: raft floats free'],
  },
});
