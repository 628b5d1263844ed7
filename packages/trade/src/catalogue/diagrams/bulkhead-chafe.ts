import { flaw } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, cut, note, shape, tube } from '../../drawing/panels.ts';

const bulkhead = [
  cut([
    [70, 8],
    [82, 8],
    [82, 56],
    [70, 56],
  ]),
  cut([
    [70, 92],
    [82, 92],
    [82, 142],
    [70, 142],
  ]),
];

const clip = (x: number, y: number): string[] => [
  shape(`M${x - 5} ${y - 12} H${x + 5} V${y + 12} H${x - 5} Z`),
  shape(`M${x - 5} ${y + 12} H${x + 5} V${y + 22} H${x - 5} Z`),
];

export const bulkheadChafe = asFoundAndAsItShouldBe({
  key: 'bulkhead-chafe',
  title: 'Hose or cable through a bulkhead: bare edge, and bushed and clipped',
  description:
    'A hose or cable passing through a bulkhead, cut. As found: it hangs slack on the raw edge of the hole, which saws through it as the boat works. As it should be: a smooth bush lines the hole and clips on both sides hold the run straight and clear.',
  asFound: {
    shapes: [
      tube('M3 64 C32 64 48 84 76 84 C104 84 116 94 147 94', 16),
      ...bulkhead,
      flaw('M66 90 L70 84 L73 87 L76 81 L79 87 L82 84 L86 90'),
      arrow([104, 122], [82, 96], true),
      note('Sawn by', 100, 134),
      note('the edge', 100, 145),
      note('Slack', 20, 50),
    ],
    caption: ['Hangs on a raw edge'],
  },
  asItShouldBe: {
    shapes: [
      tube('M3 74 H147', 16),
      ...bulkhead,
      shape('M64 48 H70 V56 H82 V48 H88 V64 H64 Z'),
      shape('M64 84 H88 V100 H82 V92 H70 V100 H64 Z'),
      ...clip(32, 74),
      ...clip(120, 74),
      shape('M12 96 H52 V102 H12 Z M100 96 H140 V102 H100 Z'),
      arrow([110, 128], [89, 99]),
      note('Bush', 115, 133),
      note('Clip', 32, 114, 'middle'),
    ],
    caption: ['Bushed, and clipped each side'],
  },
});
