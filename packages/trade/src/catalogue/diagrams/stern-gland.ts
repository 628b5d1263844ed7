import { drops, flaw, placed, wormClamp } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, shape } from '../../drawing/panels.ts';

// From the side, bow to the left: shaft, gland on its hose, stern tube in the hull (cut).
const shaft = shape('M3 66 H147 V82 H3 Z');
const sternTube = [
  shape('M116 54 H147 V94 H116 Z'),
  cut([
    [136, 20],
    [146, 20],
    [146, 54],
    [136, 54],
  ]),
  cut([
    [136, 94],
    [146, 94],
    [146, 128],
    [136, 128],
  ]),
];
const body = [shape('M56 54 H84 V94 H56 Z'), shape('M48 44 H56 V104 H48 Z')];
const hose = shape('M68 50 H130 V98 H68 Z');

/** The follower that presses the packing, its studs and nuts; so far from the body. */
const follower = (gap: number): string[] => {
  const left = 48 - gap - 7;
  return [49, 99]
    .map((y) => shape(`M${left - 12} ${y - 2} H48 V${y + 2} H${left - 12} Z`))
    .concat(
      shape(`M${left + 7} 60 H48 V88 H${left + 7} Z`),
      shape(`M${left} 44 H${left + 7} V104 H${left} Z`),
      ...[49, 99].map((y) => shape(`M${left - 6} ${y - 5} H${left} V${y + 5} H${left - 6} Z`)),
    );
};

export const sternGland = asFoundAndAsItShouldBe({
  key: 'stern-gland',
  title: 'Stern gland: one rusted clamp and screwed home, and held by two clamps',
  description:
    'A packed stern gland on its hose at the inner end of the stern tube, from the side. As found: one rusted clamp at each end of a bulged and cracked hose, the follower screwed home askew so that the packing cannot be tightened further, a steady stream. As it should be: sound hose with two clamps at each end, the follower square with room left to tighten.',
  asFound: {
    shapes: [
      shaft,
      ...sternTube,
      ...body,
      shape('M68 50 Q98 38 130 50 V98 Q98 110 68 98 Z'),
      placed(76, 74, 0, wormClamp(48)),
      placed(123, 74, 0, wormClamp(48)),
      flaw('M92 56 L96 62 L93 67 L98 74 M104 78 L108 84 L105 90'),
      shape('M20 47 H48 V51 H20 Z M20 97 H48 V101 H20 Z'),
      shape('M38 44 L45 44 L48 104 L41 104 Z'),
      shape('M31 44 H38 V54 H31 Z M34 94 H41 V104 H34 Z'),
      shape('M3 66 H38 V82 H3 Z'),
      drops(34, 108, 4),
      arrow([96, 130], [98, 94], true),
      note('Cracked', 76, 143),
      note('Askew,', 4, 22),
      note('screwed home', 4, 33),
    ],
    caption: ['One clamp at each end,', 'follower at its stop'],
  },
  asItShouldBe: {
    shapes: [
      shaft,
      ...sternTube,
      ...body,
      hose,
      placed(73.5, 74, 0, wormClamp(48)),
      placed(84, 74, 0, wormClamp(48)),
      placed(114, 74, 0, wormClamp(48)),
      placed(124.5, 74, 0, wormClamp(48)),
      ...follower(10),
      shape('M3 66 H31 V82 H3 Z'),
      arrow([43, 122], [43, 91]),
      note('Room to tighten', 14, 134),
      note('Square', 4, 33),
    ],
    caption: ['Two clamps at each end,', 'follower square'],
  },
});
