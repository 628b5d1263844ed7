import { flaw } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, shape, thin } from '../../drawing/panels.ts';
import { hairline } from '../../drawing/style.ts';

// Seen from the port side: transom to the left, propeller to the right, aft.
const drive = [
  cut([
    [-6, 4],
    [12, 4],
    [20, 80],
    [-6, 80],
  ]),
  shape('M14 18 L28 20 L34 58 L18 62 Z'),
  shape('M28 22 L44 14 H78 Q87 14 89 23 L91 40 L83 50 H60 L34 56 Z'),
  thin('M44 14 L50 26 H90'),
  shape('M50 50 H84 L81 80 H56 Z'),
  shape('M42 80 H138 Q141 80 141 82 Q141 84 138 84 H42 Q39 82 42 80 Z'),
  shape('M56 84 H94 L98 106 H52 Z'),
  shape('M64 123 L70 145 Q71 148 74 148 H88 L94 123 Z'),
  shape('M30 115 Q34 104 56 104 H104 L109 106 V123 L104 125 H56 Q34 125 30 115 Z'),
  shape('M109 105 H123 L129 110 V120 L123 124 H109 Z'),
  shape('M112 106 C107 99 108 90 112 88 C120 88 123 97 120 106 Z'),
  shape('M112 123 C107 132 109 142 114 144 C122 142 123 132 120 123 Z'),
  thin('M38 58 L64 66 M38 62 L64 70'),
  shape('M34 56 L40 57 V65 L34 64 Z'),
  shape('M62 64 L68 65 V72 L62 71 Z'),
];

const sites = [
  'M122 84 H137 L134 97 H126 Z', // the tab under the cavitation plate, aft of the propeller
  'M18 64 H33 V73 H19 Z', // on the transom bracket
  'M60 88 H86 V98 H60 Z', // on the gear housing
];

export const sternDriveAnodes = asFoundAndAsItShouldBe({
  key: 'stern-drive-anodes',
  title: 'Stern-drive anodes wasted or missing, and renewed',
  description:
    'Side view of a stern drive. As found, the anode under the cavitation plate is missing, those on the transom bracket and the gear housing are wasted to scraps, and the casting is pitted. As it should be, all of them, drawn shaded, are whole, bare and fastened to bright metal.',
  asFound: {
    shapes: [
      ...drive,
      ...sites.map((d) => thin(d, true)),
      shape('M20 66 L25 65 L28 68 L25 72 L20 71 Z', hairline),
      shape('M68 92 L73 90 L77 93 L74 97 L69 96 Z', hairline),
      flaw(
        'M46 112 l2 -2 l2 2 M54 118 l2 -2 l2 2 M42 118 l2 -2 l2 2 M62 111 l2 -2 l2 2 M72 116 l2 -2 l2 2 M72 60 l2 -2 l2 2 M65 76 l2 -2 l2 2',
      ),
      note('Missing', 102, 60),
      arrow([122, 65], [129, 86], true),
      note('Casting', 4, 134),
      note('pitted', 4, 145),
      arrow([22, 124], [40, 117], true),
    ],
    caption: ['No anode left: the casting', 'itself is wasting'],
  },
  asItShouldBe: {
    shapes: [
      ...drive,
      ...sites.map((d) => shape(d, hairline)),
      note('Whole set', 98, 60),
      arrow([122, 65], [129, 86]),
      note('Bare, and', 4, 134),
      note('renewed', 4, 145),
    ],
    caption: ['Whole set of one alloy that', 'suits the water, never painted'],
  },
});
