import { flaw, placed, seacock, wormClamp } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, shape, thin, tube } from '../../drawing/panels.ts';

// The hull's bottom, cut beside the fitting that goes through it; sea below.
const through = (x: number): string[] => [
  cut([
    [3, 122],
    [x - 8, 122],
    [x - 8, 132],
    [3, 132],
  ]),
  cut([
    [x + 8, 122],
    [147, 122],
    [147, 132],
    [x + 8, 132],
  ]),
  note('Sea', 6, 144),
  shape(`M${x - 22} 132 H${x + 22} Q${x + 18} 138 ${x + 8} 138 H${x - 8} Q${x - 18} 138 ${x - 22} 132 Z`),
];

const clampedHose = (x: number, from: number): string[] => [
  tube(`M${x} ${from} V30 Q${x} 14 ${x + 16} 14 H147`, 20),
  placed(x, from - 6, 90, wormClamp(20)),
  placed(x, from - 17, 90, wormClamp(20)),
];

export const seacockOnFitting = asFoundAndAsItShouldBe({
  key: 'seacock-on-fitting',
  title: 'Elbow between fitting and seacock, and seacock on the fitting',
  description:
    'Section of the bottom with a through-hull fitting, seen from the side. As found: an elbow and a length of pipe stand between the fitting and the valve; when the elbow breaks, nothing can stop the water. As it should be: a flanged seacock is screwed directly on the fitting and bolted through a pad, with the hose on its tail held by two clamps.',
  asFound: {
    shapes: [
      ...through(36),
      shape('M26 112 H46 V122 H26 Z'),
      thin('M33 112 V122 M39 112 V122'),
      // Elbow, its collars, the nipple and the valve lying on its side.
      shape('M28 104 V92 Q28 74 46 74 H56 V90 H50 Q44 90 44 96 V104 Z'),
      shape('M26 112 V103 H46 V112 Z'),
      shape('M56 72 H63 V92 H56 Z'),
      shape('M63 75 H76 V89 H63 Z'),
      thin('M66 75 V89 M69 75 V89 M72 75 V89'),
      shape('M76 73 H82 Q90 67 98 73 H104 V91 H98 Q90 97 82 91 H76 Z'),
      shape('M86 70 V64 H94 V70 Z'),
      shape('M90 66 V61 H118 Q121 61 121 63.5 Q121 66 118 66 Z'),
      tube('M104 82 H147', 20),
      placed(112, 82, 0, wormClamp(20)),
      placed(125, 82, 180, wormClamp(20)),
      flaw('M27 100 L32 98 L35 101 L40 97 L45 99'),
      arrow([16, 62], [29, 93], true),
      note('Breaks here: nothing', 8, 42),
      note('shuts off the sea', 8, 53),
      note('Valve', 90, 108, 'middle'),
    ],
    caption: ['Elbow and pipe', 'before the valve'],
  },
  asItShouldBe: {
    shapes: [
      ...through(60),
      shape('M32 114 H88 V122 H32 Z'),
      ...clampedHose(60, 76),
      placed(60, 114, 0, seacock()),
      shape('M40 108 v-3 h8 v3 Z M72 108 v-3 h8 v3 Z'),
      arrow([112, 96], [74, 94]),
      note('Valve', 117, 99),
      arrow([112, 115], [90, 117]),
      note('Pad', 117, 118),
    ],
    caption: ['Seacock directly on the fitting,', 'bolted through a pad'],
  },
});
