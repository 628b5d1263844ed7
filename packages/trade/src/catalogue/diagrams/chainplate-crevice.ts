import { area, drops, flaw } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, course, cut, note, shape, thin } from '../../drawing/panels.ts';
import { hairline, ink } from '../../drawing/style.ts';

// Section across the deck; the chainplate, seen on its edge, is bolted to the bulkhead's right-hand face.
const deckEnd = (left: number, right: number, wet: boolean): string =>
  area(`M${left} 62 H${right} V80 H${left} Z`, wet ? hairline : '#ffffff') +
  shape(`M${left} 57 H${right} V62 H${left} Z M${left} 80 H${right} V85 H${left} Z`) +
  thin(
    Array.from({ length: 10 }, (_, at) => {
      const x = left + 4 + at * 7;
      return x < right - 1 ? `M${x} 62 V80` : '';
    }).join(' '),
  );

const below = [
  cut([
    [46, 85],
    [66, 85],
    [66, 152],
    [46, 152],
  ]),
];
const bolts = [104, 128].map(
  (y) =>
    shape(`M40 ${y - 5} H46 V${y + 5} H40 Z M74 ${y - 5} H80 V${y + 5} H74 Z`) +
    shape(`M80 ${y - 2} H84 V${y + 2} H80 Z`),
);

const plate = shape('M66 152 V22 Q66 18 70 18 Q74 18 74 22 V152');
const pin = shape('M59 24 H62 V34 H59 Z M62 26 H78 V32 H62 Z') + plate;

export const chainplateCrevice = asFoundAndAsItShouldBe({
  key: 'chainplate-crevice',
  title: 'Chainplate leaking at the deck, and bedded',
  description:
    'Section through a cored deck where a chainplate passes down to its bulkhead. As found, the sealant under the cover plate has let go; water runs down the plate into the core and stands in the gap, where the stainless steel has corroded and cracked out of sight. As it should be, the core is cut back and filled solid, the cover plate is bedded on sealant and the plate is dry.',
  asFound: {
    shapes: [
      deckEnd(-4, 61, true),
      deckEnd(79, 156, true),
      ...below,
      pin,
      ...bolts,
      shape('M46 52 H65 V56 H46 Z M76 53 H94 V57 H76 Z'),
      course(
        [
          [96, 44],
          [80, 48],
          [76, 62],
        ],
        true,
      ),
      drops(87, 90, 3),
      flaw('M66 71 l3 1 l2 -1.5 l2 2'),
      flaw('M66 64 l2 1.5 l-2 2 M74 76 l-2 1.5 l2 2'),
      note('Gap open', 98, 40),
      note('Core wet', 104, 104),
      arrow([122, 94], [112, 76]),
      note('Crack', 6, 40),
      arrow([24, 46], [63, 70], true),
    ],
    caption: ['Corrodes out of sight where', 'the water stands in the gap'],
  },
  asItShouldBe: {
    shapes: [
      deckEnd(-4, 50, false),
      deckEnd(90, 156, false),
      area('M50 62 H65 V80 H50 Z M75 62 H90 V80 H75 Z', hairline),
      shape('M50 57 H65 V85 H50 Z M75 57 H90 V85 H75 Z', hairline),
      ...below,
      pin,
      ...bolts,
      area('M44 55 H96 V57.5 H44 Z M64 48 H66 V84 H64 Z M74 48 H76 V84 H74 Z', ink),
      shape('M46 51 H65 V55 H46 Z M75 51 H94 V55 H75 Z'),
      pin,
      note('Sealant', 104, 40),
      arrow([114, 46], [95, 56]),
      note('Solid filling', 96, 104),
      arrow([116, 94], [88, 75]),
    ],
    caption: ['Core cut back, filled solid;', 'cover bedded on sealant'],
  },
});
