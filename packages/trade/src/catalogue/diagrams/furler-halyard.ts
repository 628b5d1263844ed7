import { area, flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, note, shape, thin, tube } from '../../drawing/panels.ts';
import { hairline, wash } from '../../drawing/style.ts';
import { wire } from '../../drawing/tackle.ts';

// The masthead from the side; the forestay goes down to the left inside its foil. Along it a unit is (-0.62, 0.785).
const slope = 38.3;
const masthead = [shape('M112 18 H138 V24 L134 28 H112 Q108 22 112 18 Z'), shape('M118 28 H134 V152 H118 Z')];
const stay = thin('M112 23 L8 154.7');
const onStay = (down: number): readonly [number, number] => [112 - 0.62 * down, 23 + 0.785 * down];

const foilFrom = (down: number): string => {
  const [x, y] = onStay(down);
  return tube(`M${x} ${y} L8 154.7`, 7) + placed(x, y, slope, shape('M-5 -3 H5 V1 H-5 Z'));
};
const swivelAt = (down: number): string => {
  const [x, y] = onStay(down);
  return placed(
    x,
    y,
    slope,
    shape('M-7 -6 H7 V8 H-7 Z', hairline),
    thin('M-7 1 H7'),
    shape('M7 -7 H13 V-1 H7 Z'),
    shape('M7 3 H12 V9 H7 Z'),
  );
};

export const furlerHalyard = asFoundAndAsItShouldBe({
  key: 'furler-halyard',
  title: 'Furling headsail’s halyard wrapped round the stay, and led at an angle',
  description:
    'The masthead from the side with a furling headsail. As found, the halyard swivel is far below the masthead and the halyard runs along the stay and winds round it when the sail is furled. As it should be, the swivel is close to the masthead and the halyard meets it at an angle from aft, so it can’t wrap.',
  asFound: {
    shapes: [
      area('M62 92 L6 163 H74 Q80 120 62 92 Z', wash),
      ...masthead,
      stay,
      foilFrom(12),
      swivelAt(84),
      flaw(
        'M118 32 C112 30 100 34 96 38 C92 42 104 50 97 49 C86 46 84 52 84 55 C84 60 92 65 86 66 C76 62 74 68 73 70 C73 76 80 82 72 86',
      ),
      circle(118, 32, 4),
      note('Halyard wraps', 10, 18),
      arrow([60, 24], [81, 50], true),
      note('Sail', 42, 138),
    ],
    caption: ['Furling winds it up: stay', 'and foil are twisted, broken'],
  },
  asItShouldBe: {
    shapes: [
      area('M88 62 L6 163 H96 Q110 110 88 62 Z', wash),
      ...masthead,
      stay,
      foilFrom(12),
      swivelAt(40),
      wire('M118 42 L95 51'),
      circle(118, 42, 4),
      note('At an angle', 14, 18),
      arrow([60, 24], [100, 47]),
      note('Sail', 60, 138),
    ],
    caption: ['Swivel near the masthead,', 'halyard led from aft of it'],
  },
});
