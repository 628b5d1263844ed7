import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, note, shape, thin } from '../../drawing/panels.ts';
import { hairline } from '../../drawing/style.ts';
import { bowShackle, chainThrough, flatLink, stations } from '../../drawing/tackle.ts';

// The anchor's shank seen on its edge; the boat has sheered, so the chain pulls to one side.
const shank = shape('M43 152 V104 Q43 99 47 99 H53 Q57 99 57 104 V152');

// A swivel whose jaws are pinned straight over the shank, its stem and eye above.
const jaws =
  shape('M28 106 H33 V118 H28 Z M67 109 H72 V115 H67 Z') +
  shape(
    'M32 120 V86 Q32 72 44 72 H56 Q68 72 68 86 V120 Q68 123 65 123 H62 Q59 123 59 120 V92 Q59 86 54 86 H46 Q41 86 41 92 V120 Q41 123 38 123 H35 Q32 123 32 120 Z',
  ) +
  shape('M42 72 V66 H58 V72 Z M45 66 V60 H55 V66 Z') +
  circle(50, 50, 11) +
  circle(50, 50, 5) +
  thin('M32 108 H68 M32 116 H68', true);

// A swivel with an eye at each end, lying left to right.
const swivel = [
  placed(-12, 0, 0, flatLink(22, 15, 5)),
  placed(12, 0, 0, flatLink(22, 15, 5)),
  shape('M-6 -7 H2 V7 H-6 Z', hairline),
  shape('M2 -5 H6 V5 H2 Z', hairline),
];

export const anchorSwivel = asFoundAndAsItShouldBe({
  key: 'anchor-swivel',
  title: 'Swivel pinned straight to the anchor, and in line beyond a shackle',
  description:
    'The chain pulls sideways on an anchor’s shank, seen on its edge. As found, the jaws of a swivel are pinned straight over the shank and can’t turn that way: the pull bends them open. As it should be, a bow shackle and a few links are on the shank first, and the swivel lies in the line of the pull.',
  asFound: {
    shapes: [
      shank,
      chainThrough(
        stations(
          [
            [61, 47],
            [170, 20],
          ],
          14,
        ).slice(0, 9),
        14,
        4.5,
      ),
      jaws,
      flaw('M33 90 l4 -2 l3 3 l3 -2'),
      arrow([96, 62], [138, 52], true),
      note('Pull', 106, 74),
      note('Jaws bent', 90, 105),
      arrow([85, 99], [71, 91], true),
      note('Shank', 64, 144),
    ],
    caption: ['The jaws can’t follow a pull', 'to the side: they open, crack'],
  },
  asItShouldBe: {
    shapes: [
      placed(50, 112, 0, bowShackle()),
      shank,
      thin('M43 106 H57 M43 118 H57', true),
      chainThrough(
        stations(
          [
            [74, 53],
            [88, 48],
          ],
          13,
        ),
        13,
        4.5,
      ),
      chainThrough(
        stations(
          [
            [134, 29],
            [170, 16],
          ],
          14,
        ),
        14,
        4.5,
      ),
      placed(111, 38, -20, ...swivel),
      arrow([104, 66], [142, 54]),
      note('Pull', 114, 78),
      note('Swivel', 62, 18),
      arrow([94, 20], [106, 29]),
      note('Shank', 64, 144),
    ],
    caption: ['Shackle on the shank first; the', 'swivel lies in line with the pull'],
  },
});
