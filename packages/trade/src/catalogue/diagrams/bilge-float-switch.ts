import { area, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, course, cut, note, shape, thin, tube } from '../../drawing/panels.ts';

// Above: the bilge from above, bow to the left. Below: the same place from the side.
const bilge = [
  shape('M18 26 H25 V84 H18 Z M122 26 H129 V84 H122 Z'),
  thin('M3 55 H147', true),
  note('Bow', 6, 16),
  arrow([46, 12], [28, 12]),
  area('M25 126 H122 V136 H25 Z'),
  thin('M25 126 H122'),
  cut([
    [3, 136],
    [147, 136],
    [147, 143],
    [3, 143],
  ]),
  cut([
    [18, 100],
    [25, 100],
    [25, 136],
    [18, 136],
  ]),
  cut([
    [122, 100],
    [129, 100],
    [129, 136],
    [122, 136],
  ]),
];

const switchFromAbove = [
  shape('M-8 -8 H6 V8 H-8 Z'),
  shape('M6 -5 H10 V5 H6 Z'),
  shape('M10 -6 H30 Q33 -6 33 -3 V3 Q33 6 30 6 H10 Z'),
  thin('M4 -8 V8'),
];

export const bilgeFloatSwitch = asFoundAndAsItShouldBe({
  key: 'bilge-float-switch',
  title: 'Bilge float switch: athwartships and obstructed, and sheltered fore and aft',
  description:
    'The bilge between two frames, from above with the bow to the left, and from the side. As found: the switch lies athwartships in the open bilge, where surging water wrenches its arm sideways, and a hose lies over the float. As it should be: it lies fore and aft close behind a frame that shelters it, arm pointing aft, nothing above it, free to lift.',
  asFound: {
    shapes: [
      ...bilge,
      placed(76, 46, 90, ...switchFromAbove),
      tube('M147 64 H128 Q96 64 76 69 Q56 74 22 74 H3', 8),
      course(
        [
          [38, 58],
          [54, 55],
          [67, 62],
        ],
        true,
      ),
      note('Surge', 30, 47),
      shape('M68 130 H84 V136 H68 Z'),
      shape('M70 120 H82 V130 H70 Z'),
      tube('M3 96 H22 C42 96 48 116 76 116 C104 116 108 96 128 96 H147', 8),
      note('Held down', 76, 101, 'middle'),
    ],
    caption: ['Athwartships, in the surge,', 'with a hose on the float'],
  },
  asItShouldBe: {
    shapes: [
      ...bilge,
      placed(38, 55, 0, ...switchFromAbove),
      arrow([76, 55], [98, 55]),
      note('Aft', 84, 47),
      shape('M30 128 H44 V136 H30 Z'),
      placed(45, 130, 0, shape('M0 -3 H22 Q25 -3 25 0 V4 H3 Z')),
      thin('M46 128 L64 108 Q66 106 69 108 L73 112 Q75 115 72 117 L51 131', true),
      course([
        [86, 124],
        [88, 112],
        [80, 103],
      ]),
      note('Free', 92, 118),
      note('Frame', 30, 97),
    ],
    caption: ['Arm pointing aft, sheltered', 'by the frame ahead of it'],
  },
});
