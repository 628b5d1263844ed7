import { area } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, shape, thin } from '../../drawing/panels.ts';

// Lengthwise section of the bracket's boss (wide hatching), the bearing's shell (close hatching) and its rubber.
const above = [
  cut([
    [36, 30],
    [114, 30],
    [114, 42],
    [36, 42],
  ]),
  cut(
    [
      [40, 42],
      [110, 42],
      [110, 47],
      [40, 47],
    ],
    2.5,
  ),
  shape('M40 47 H110 V55 H40 Z', '#f1ece0'),
];
const below = [
  shape('M40 101 H110 V109 H40 Z', '#f1ece0'),
  cut(
    [
      [40, 109],
      [110, 109],
      [110, 114],
      [40, 114],
    ],
    2.5,
  ),
  cut([
    [36, 114],
    [114, 114],
    [114, 126],
    [36, 126],
  ]),
];

export const shaftWornBearing = asFoundAndAsItShouldBe({
  key: 'shaft-worn-bearing',
  title: 'Worn shaft in a new bearing, and shaft and bearing renewed',
  description:
    'Both panels are a lengthwise section of a water-lubricated bearing in its bracket with the shaft through it. As found, the bearing is new but the shaft is worn to a waist where it runs, so it lies on the bottom and a gap remains above. As it should be, shaft and bearing are both renewed and only the small running clearance is left.',
  asFound: {
    shapes: [
      ...above,
      ...below,
      shape(
        'M-3 61 H34 C38 61 38 65 43 65 H107 C112 65 112 61 116 61 H153 V105 H116 C112 105 112 101 107 101 H43 C38 101 38 105 34 105 H-3 Z',
      ),
      area('M44 56 H106 V64 H44 Z', '#ffffff'),
      note('Gap remains', 75, 16, 'middle'),
      arrow([75, 21], [75, 62], true),
      note('Worn waist', 75, 86, 'middle'),
      note('New bearing', 75, 142, 'middle'),
    ],
    caption: ['A new bearing doesn’t cure', 'a worn shaft: it still whips'],
  },
  asItShouldBe: {
    shapes: [
      ...above,
      ...below,
      shape('M-3 57 H153 V99 H-3 Z'),
      thin('M40 55 H110 M40 101 H110'),
      note('Running clearance only', 75, 16, 'middle'),
      arrow([75, 21], [75, 54]),
      note('Full diameter', 75, 82, 'middle'),
      note('New bearing', 75, 142, 'middle'),
    ],
    caption: ['Shaft built up or renewed,', 'then the bearing'],
  },
});
