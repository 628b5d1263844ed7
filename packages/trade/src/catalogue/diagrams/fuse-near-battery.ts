import { battery, cable, fuse, sparks } from '../../drawing/electrics.ts';
import { placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, shape, thin } from '../../drawing/panels.ts';
import { ink, signal } from '../../drawing/style.ts';

const bulkhead = [
  cut([
    [86, -5],
    [94, -5],
    [94, 60],
    [86, 60],
  ]),
  cut([
    [86, 72],
    [94, 72],
    [94, 155],
    [86, 155],
  ]),
];
const fixtures = [
  placed(38, 138, 0, battery(64, 52)),
  shape('M-2 138 H86 V152 H-2 Z'),
  shape('M110 92 H144 V124 H110 Z'),
  thin('M127 108 m-9 0 a9 9 0 1 0 18 0 a9 9 0 1 0 -18 0 M121 102 l12 12 M133 102 l-12 12'),
];
const lead = cable('M54 82 V72 Q54 66 60 66 H120 Q127 66 127 73 V92');

export const fuseNearBattery = asFoundAndAsItShouldBe({
  key: 'fuse-near-battery',
  title: 'Fuse far from the battery, and close to it',
  description:
    'A positive lead runs from a battery through a bulkhead to a consumer. As found, the only fuse is at the consumer, and the lead has chafed where it passes the bulkhead: nothing limits the current there. As it should be, the fuse is close to the battery’s positive post and a grommet protects the lead at the bulkhead.',
  asFound: {
    shapes: [
      ...fixtures,
      lead,
      ...bulkhead,
      placed(113, 66, 0, fuse()),
      sparks([88, 62], 7, signal),
      note('Battery', 22, 128),
      note('Chafed', 46, 24),
      arrow([64, 29], [80, 56], true),
      note('Fuse', 112, 30),
      arrow([120, 35], [115, 57], true),
    ],
    caption: ['Nothing stops the current', 'before the fuse: fire'],
  },
  asItShouldBe: {
    shapes: [
      ...fixtures,
      lead,
      ...bulkhead,
      shape('M83 58 H97 V62 H83 Z M83 70 H97 V74 H83 Z', ink),
      cable('M80 66 H100'),
      placed(66, 66, 0, fuse()),
      note('Battery', 22, 128),
      note('Fuse', 30, 30),
      arrow([42, 35], [60, 57]),
      note('Grommet', 104, 30),
      arrow([114, 35], [99, 57]),
    ],
    caption: ['Fuse next to the source and', 'no larger than the cable bears'],
  },
});
