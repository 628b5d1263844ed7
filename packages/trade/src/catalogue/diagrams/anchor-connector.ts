import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, note, shape, thin, tube } from '../../drawing/panels.ts';
import { bowShackle, edgeLink, flatLink, wire } from '../../drawing/tackle.ts';

const shank = [
  shape('M58 151 V102 Q58 97 63 97 H69 Q74 97 74 102 V151'),
  thin('M58 104 H74 M58 116 H74', true),
  note('Shank', 52, 144, 'end'),
  note('Chain', 42, 24, 'end'),
];

export const anchorConnector = asFoundAndAsItShouldBe({
  key: 'anchor-connector',
  title: 'Quick link at the anchor, and an anchor shackle',
  description:
    'As found, a quick link thinner than the chain joins the chain to the anchor’s shank; its threaded sleeve is the weakest place and nothing locks it. As it should be, a bow shackle of anchor grade, heavier than the chain, has its pin through the shank, its bow in the chain and its pin moused.',
  asFound: {
    shapes: [
      placed(66, 6, 90, flatLink(42, 32, 9)),
      // The quick link: an open oval whose gap the sleeve bridges.
      tube('M66 45 A18 18 0 0 1 84 63 V94 A18 18 0 0 1 48 94 V63 A18 18 0 0 1 66 45 Z', 6.5),
      thin('M81 63 h6 M81 66 h6 M81 69 h6'),
      shape('M77 71 H91 V94 H77 Z'),
      thin('M81.5 71 V94 M86.5 71 V94'),
      placed(66, 33, 90, edgeLink(44, 9)),
      shape('M58 151 V102 Q58 97 63 97 H69 Q74 97 74 102 V151'),
      thin('M58 107 H74 M58 115 H74', true),
      note('Shank', 52, 144, 'end'),
      note('Chain', 42, 24, 'end'),
      flaw('M89 69 q4 -3 1 -6 M92 71 q4 -3 3 -7'),
      arrow([120, 56], [97, 70], true),
      note('Sleeve', 107, 40),
      note('unlocked', 102, 51),
      note('Quick link', 93, 122),
      arrow([105, 111], [86, 100]),
    ],
    caption: ['Thinner than the chain, and', 'its sleeve works loose'],
  },
  asItShouldBe: {
    shapes: [
      placed(66, 6, 90, flatLink(42, 32, 9)),
      placed(66, 110, 0, bowShackle()),
      placed(66, 33, 90, edgeLink(44, 9)),
      ...shank,
      wire('M81 87 L95 83.5 M80.5 91.5 L94.5 88 M80 96 L93.5 92.5'),
      wire('M95 83.5 C101 88 104 98 108 108 M93.5 92.5 C98 96 102 104 106 110'),
      note('Anchor', 106, 30),
      note('shackle', 106, 41),
      arrow([117, 47], [99, 60]),
      note('Moused', 108, 78),
    ],
    caption: ['Heavier than the chain, marked', 'with its load, pin moused'],
  },
});
