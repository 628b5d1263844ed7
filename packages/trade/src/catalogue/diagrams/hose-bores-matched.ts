import { arc, drops, flaw, outlineOf, placed, wormClamp } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, note, shape, thin } from '../../drawing/panels.ts';

export const hoseBoresMatched = asFoundAndAsItShouldBe({
  key: 'hose-bores-matched',
  title: 'Hoses of unequal bore: forced together, and joined by a stepped fitting',
  description:
    'A wide hose meets a narrow one. As found: the wide hose is drawn down over the narrow one with a single clamp; the cross-section at the clamp shows the fold through which it leaks. As it should be: a stepped tail between them, each hose on the bore it was made for and held by two clamps; the cross-section is round and tight.',
  asFound: {
    shapes: [
      shape('M3 44 H66 V68 H3 Z'),
      shape('M147 32 H100 Q84 32 72 43 Q66 46 54 42 V70 Q66 66 72 69 Q84 80 100 80 H147 Z'),
      thin('M72 47 Q86 45 98 38 M72 51 Q84 51 92 47 M72 65 Q86 67 98 74 M72 60 Q84 61 92 65'),
      placed(65, 56, 0, wormClamp(24)),
      drops(65, 73, 2),
      note('One clamp', 65, 24, 'middle'),
      // Section at the clamp: the wide hose has to fold.
      shape(
        'M52 100 C66 100 74 108 74 119 C74 131 64 140 51 140 C38 140 29 131 29 119 C29 108 36 101 46 100 L44 90 Q49 84 54 90 Z',
      ),
      circle(51, 120, 13),
      flaw('M49 108 L48 99 L47 92 Q49 89 51.5 92 L50.5 99 L51 108'),
      arrow([90, 98], [55, 97], true),
      note('Fold leaks', 95, 101),
      note('At the clamp', 84, 136),
    ],
    caption: ['Wide hose choked down', 'over a narrow one'],
  },
  asItShouldBe: {
    shapes: [
      shape('M66 40 H84 V72 H66 Z'),
      thin('M66 50 H84 M66 62 H84'),
      shape('M3 44 H63 V68 H3 Z'),
      shape('M87 32 H147 V80 H87 Z'),
      thin('M30 48 H63 M30 64 H63 M87 37 H122 M87 75 H122 M30 48 V64 M122 37 V75', true),
      shape('M63 47 H66 V65 H63 Z M84 36 H87 V76 H84 Z'),
      placed(40, 56, 0, wormClamp(24)),
      placed(54, 56, 0, wormClamp(24)),
      placed(97, 56, 0, wormClamp(48)),
      placed(112, 56, 0, wormClamp(48)),
      note('Stepped tail', 66, 17, 'middle'),
      arrow([75, 21], [75, 38]),
      shape(`${outlineOf(arc([51, 120], 20, 0, 360))} ${outlineOf(arc([51, 120], 13, 360, 0))}`),
      circle(51, 120, 13),
      circle(51, 120, 9.5),
      note('At the clamp', 84, 136),
    ],
    caption: ['Each hose on its own bore,', 'two clamps at each end'],
  },
});
