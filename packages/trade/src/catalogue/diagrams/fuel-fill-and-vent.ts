import { area, drops, flaw, placed, vapour, wormClamp } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, course, cut, note, shape, thin, tube } from '../../drawing/panels.ts';

// Section across: deck, topside to the right, tank below. The fill comes down at x = 34, the vent leaves at x = 84.
const boat = [
  cut([
    [3, 22],
    [29, 22],
    [29, 28],
    [3, 28],
  ]),
  cut([
    [39, 22],
    [134, 22],
    [128, 146],
    [122, 146],
    [127.7, 28],
    [39, 28],
  ]),
  // Deck plate with its cap, and its spigot below.
  shape('M29 22 H39 V44 H29 Z'),
  shape('M22 18 H46 V22 H22 Z'),
  shape('M29 14 H39 V18 H29 Z'),
  // Tank with its spigots.
  shape('M8 96 H104 V138 H8 Z'),
  area('M8.75 112 H103.25 V137.25 H8.75 Z'),
  thin('M8 112 H104'),
  shape('M29 82 H39 V96 H29 Z M81 86 H87 V96 H81 Z'),
  note('Fuel', 56, 129, 'middle'),
];
const fillHose = tube('M34 34 V92', 15);

export const fuelFillAndVent = asFoundAndAsItShouldBe({
  key: 'fuel-fill-and-vent',
  title: 'Fuel fill and vent: chafed and venting inside, and bonded and venting outside',
  description:
    'Fuel tank, fill from the deck and vent, in a section across the boat. As found: the fill hose is chafed and held by single clamps, deck plate and tank are not connected electrically, and the vent ends inside the boat, where vapour and overflow collect. As it should be: two clamps at each end, a bonding wire from deck plate to tank, and a vent that rises all along to an outlet high in the topside.',
  asFound: {
    shapes: [
      ...boat,
      fillHose,
      placed(34, 39, 90, wormClamp(15)),
      placed(34, 87, 90, wormClamp(15)),
      flaw('M26.5 58 L31 60 L28 63 L33 66 L29 69 L26.5 70'),
      drops(22, 70, 2),
      note('Chafe', 50, 66),
      arrow([47, 63], [35, 63], true),
      tube('M84 90 V62 Q84 52 94 52 H102', 7),
      vapour(107, 70, 14, 64, 6),
      course(
        [
          [101, 52],
          [111, 52],
          [111, 66],
        ],
        true,
      ),
      note('Vent inside', 68, 42),
    ],
    caption: ['Chafed, not bonded;', 'vents into the boat'],
  },
  asItShouldBe: {
    shapes: [
      ...boat,
      fillHose,
      ...[37, 46, 79, 88].map((y) => placed(34, y, 90, wormClamp(15))),
      thin('M24 22 Q16 40 18 62 Q18 84 22 96'),
      shape('M19 94 h6 v3 h-6 Z'),
      note('Bond', 3, 12),
      tube('M84 90 V60 Q84 48 97 46 L128 40', 7),
      arrow([127, 40.5], [147, 37]),
      note('Rises', 94, 72),
    ],
    caption: ['Double clamps, bonded;', 'vents outside the boat'],
  },
});
