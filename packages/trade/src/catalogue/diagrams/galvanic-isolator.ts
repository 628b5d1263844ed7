import { conductor } from '../../drawing/electrics.ts';
import { arrow, asFoundAndAsItShouldBe, course, note, shape, thin, waterline } from '../../drawing/panels.ts';
import { hairline } from '../../drawing/style.ts';

// Two boats seen end on, one to each side of the pontoon's post, each with its metal under water.
const hull = (x: number): string =>
  shape(
    `M${x - 25} 78 H${x + 25} C${x + 25} 100 ${x + 14} 112 ${x} 116 C${x - 14} 112 ${x - 25} 100 ${x - 25} 78 Z`,
  );
const metal = (x: number, eaten: boolean): string =>
  eaten
    ? shape(
        `M${x - 5} 113 H${x + 5} L${x + 2} 119 L${x + 4} 123 L${x} 127 L${x - 2} 122 L${x - 5} 120 Z`,
        hairline,
      )
    : shape(`M${x - 5} 113 H${x + 5} V130 H${x - 5} Z`, hairline);
const scene = [
  waterline(96, 0, 150),
  hull(28),
  hull(122),
  shape('M60 84 H90 V90 H60 Z'),
  shape('M63 90 H67 V152 H63 Z M83 90 H87 V152 H83 Z'),
  shape('M68 54 Q68 50 72 50 H78 Q82 50 82 54 V84 H68 Z'),
  thin('M71 58 H79'),
  note('Neighbour', 4, 14),
  note('This boat', 146, 14, 'end'),
];

export const galvanicIsolator = asFoundAndAsItShouldBe({
  key: 'galvanic-isolator',
  title: 'Shore earth joining two boats’ underwater metal, and a galvanic isolator in it',
  description:
    'Two boats lie at one shore-power post. As found, the earth wire joins the underwater metal of both: current leaves this boat’s metal through the water to the neighbour’s and returns by the earth wire, and this boat’s metal is eaten. As it should be, a galvanic isolator in this boat’s earth wire, close to the inlet, stops that current and keeps the safety earth.',
  asFound: {
    shapes: [
      ...scene,
      metal(28, false),
      metal(122, true),
      conductor('M28 113 V64 Q28 36 56 36 H94 Q122 36 122 64 V113 M75 36 V50'),
      arrow([50, 36], [100, 36], true),
      course(
        [
          [115, 126],
          [96, 142],
          [54, 142],
          [35, 127],
        ],
        true,
      ),
      note('Earth wire', 72, 28, 'middle'),
      note('Eaten', 123, 142),
    ],
    caption: ['A battery of two boats: the', 'less noble metal dissolves'],
  },
  asItShouldBe: {
    shapes: [
      ...scene,
      metal(28, false),
      metal(122, false),
      conductor('M28 113 V64 Q28 36 56 36 H94 Q122 36 122 64 V113 M75 36 V50'),
      shape('M112 55 H132 V75 H112 Z'),
      thin('M114.5 61 h6.5 l-3.2 6 Z M114.5 68 h6.5 M123 69 h6.5 l-3.2 -6 Z M123 62 h6.5'),
      note('Isolator', 146, 32, 'end'),
      arrow([136, 37], [130, 52]),
      note('Earth wire', 72, 28, 'middle'),
    ],
    caption: ['Isolator by the inlet; the', 'safety earth stays whole'],
  },
});
