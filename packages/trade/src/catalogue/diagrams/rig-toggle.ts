import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, note, shape, thin } from '../../drawing/panels.ts';
import { riggingScrew } from '../../drawing/rigging.ts';

const lean = 20;

// The chainplate seen on its edge, standing through the deck.
const chainplate = [
  shape('M-2 134 H152 V152 H-2 Z'),
  shape('M46 152 V104 Q46 100 50 100 Q54 100 54 104 V152'),
  shape('M36 130 H64 V134 H36 Z'),
];

// A fork over it, its pin across.
const jaw = (crown: number): string =>
  shape('M32 108 H35 V116 H32 Z M65 110 H70 V114 H65 Z') +
  shape(
    `M36 118 V${crown + 12} Q36 ${crown} 46 ${crown} H54 Q64 ${crown} 64 ${crown + 12} V118 Q64 120 62 120 H58 Q56 120 56 118 V104 Q56 97 50 97 Q44 97 44 104 V118 Q44 120 42 120 H38 Q36 120 36 118 Z`,
  ) +
  thin('M36 108 H64 M36 116 H64', true);

export const rigToggle = asFoundAndAsItShouldBe({
  key: 'rig-toggle',
  title: 'Rigging screw without a toggle, and with one',
  description:
    'A stay leans away from the line of its chainplate, which is seen on its edge. As found, the fork of the rigging screw is pinned straight to the chainplate and can’t turn that way, so the threaded stud is bent and cracks. As it should be, a toggle with a second pin at right angles lets the screw follow the stay.',
  asFound: {
    shapes: [
      ...chainplate,
      placed(50, 84, lean, riggingScrew()),
      jaw(84),
      flaw('M49.5 78 l3 1.5 l2.5 -1 l3.5 2'),
      thin('M50 84 V2', true),
      note('Stud bent', 92, 92),
      arrow([87, 88], [61, 80], true),
      note('Chainplate', 70, 128),
    ],
    caption: ['Bent at every gust: it', 'breaks by fatigue'],
  },
  asItShouldBe: {
    shapes: [
      ...chainplate,
      jaw(84),
      shape('M43 88 V70 Q43 61 50 61 Q57 61 57 70 V88 Z'),
      placed(
        50,
        70,
        lean,
        placed(0, -8, 0, riggingScrew()),
        shape('M-5 -16 H5 L10 -9 V2 A10 10 0 0 1 -10 2 V-9 Z'),
      ),
      circle(50, 70, 5),
      note('Toggle', 92, 92),
      arrow([87, 89], [65, 92]),
      note('Chainplate', 70, 128),
    ],
    caption: ['Two pins at right angles: the', 'screw lies in the stay’s line'],
  },
});
