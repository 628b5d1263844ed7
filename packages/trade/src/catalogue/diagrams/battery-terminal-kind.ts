import { arrow, asFoundAndAsItShouldBe, circle, note, shape, thin, tube } from '../../drawing/panels.ts';

// The corner of a battery with its positive post, from above.
const battery = [
  shape('M3 36 H70 Q76 36 76 42 V108 Q76 114 70 114 H3'),
  thin('M3 42 H70 V108 H3'),
  note('+', 10, 58),
];

export const batteryTerminalKind = asFoundAndAsItShouldBe({
  key: 'battery-terminal-kind',
  title: 'Battery post: spring clamp, and bolted lug under a cover',
  description:
    'The positive post of a battery from above. As found: the jaws of a sprung clamp bite the post at two points and stand bare; it can spring off, heats under load and sparks. As it should be: a clamp bolted tight all round the post, the cable crimped into a lug bolted to it, and an insulating cover over the whole.',
  asFound: {
    shapes: [
      ...battery,
      circle(46, 75, 12),
      circle(46, 75, 9),
      tube('M124 89 Q136 93 147 93', 8),
      shape(
        'M36 64 L40 61 L44 63 L48 61 L52 64 L58 66 L88 78 L132 68 V59 L94 67 Q80 64 66 57 Q50 50 36 57 Z',
      ),
      shape(
        'M36 86 L40 89 L44 87 L48 89 L52 86 L58 84 L88 72 L132 82 V91 L94 83 Q80 86 66 93 Q50 100 36 93 Z',
      ),
      thin('M116 71 l4 1.5 l-8 2 l8 2 l-8 2 l4 1.5'),
      circle(90, 75, 5),
      circle(90, 75, 1.5),
      arrow([46, 27], [46, 55], true),
      arrow([46, 124], [46, 95], true),
      note('Bites at two points', 52, 24),
    ],
    caption: ['Sprung clamp, bare:', 'it comes off and sparks'],
  },
  asItShouldBe: {
    shapes: [
      ...battery,
      tube('M116 75 H147', 11),
      shape('M62 66 H98 V84 H62 Z'),
      shape('M98 67 H120 V83 H98 Z'),
      thin('M104 67 V83 M110 67 V83'),
      circle(46, 75, 19),
      circle(46, 75, 12),
      circle(46, 75, 9),
      shape('M24 66 H33 V73 H24 Z M24 77 H33 V84 H24 Z'),
      shape('M26 61 H31 V66 H26 Z M26 84 H31 V89 H26 Z'),
      shape('M76 75 L79 69.8 H85 L88 75 L85 80.2 H79 Z'),
      thin('M26 49 H118 Q126 49 126 57 V93 Q126 101 118 101 H26 Q18 101 18 93 V57 Q18 49 26 49 Z', true),
      arrow([98, 27], [98, 47]),
      note('Cover', 104, 26),
      arrow([108, 124], [108, 86]),
      note('Crimped lug', 108, 136, 'middle'),
    ],
    caption: ['Bolted all round, crimped,', 'and covered'],
  },
});
