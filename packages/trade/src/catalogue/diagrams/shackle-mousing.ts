import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, note, shape, thin } from '../../drawing/panels.ts';
import { bowShackle, edgeLink, flatLink, wire } from '../../drawing/tackle.ts';

const anchorShackle = [
  placed(66, 6, 90, flatLink(42, 32, 9)),
  placed(66, 110, 0, bowShackle()),
  placed(66, 33, 90, edgeLink(44, 9)),
  // The anchor's shank seen on its edge, with the pin through it.
  shape('M58 151 V102 Q58 97 63 97 H69 Q74 97 74 102 V151'),
  thin('M58 104 H74 M58 116 H74', true),
  note('Shank', 52, 144, 'end'),
  note('Chain', 42, 24, 'end'),
];

export const shackleMousing = asFoundAndAsItShouldBe({
  key: 'shackle-mousing',
  title: 'Shackle pin moused to the chain, and to the shackle body',
  description:
    'As found, wire runs from the eye of the shackle pin up round the chain link above; as the chain moves it works the pin and breaks the wire. As it should be, the wire goes through the eye of the pin and round the leg of the shackle body beside it, and the chain is free.',
  asFound: {
    shapes: [
      ...anchorShackle,
      flaw('M107 108 C121 82 108 42 72 26 M109 111 C125 82 112 38 72 22'),
      flaw('M60 29 L72 26 M60 25 L72 22 M60 33 L72 30'),
      arrow([122, 34], [106, 46], true),
      note('Wire round', 96, 15),
      note('the chain', 96, 26),
    ],
    caption: ['The chain moves: it turns the', 'pin and breaks the wire'],
  },
  asItShouldBe: {
    shapes: [
      ...anchorShackle,
      wire('M81 87 L95 83.5 M80.5 91.5 L94.5 88 M80 96 L93.5 92.5'),
      wire('M95 83.5 C101 88 104 98 108 108 M93.5 92.5 C98 96 102 104 106 110'),
      wire('M109 113 l5 6 l-2 4 l5 5 l-2 4'),
      arrow([121, 58], [101, 84]),
      note('Round the', 104, 41),
      note('body', 113, 52),
    ],
    caption: ['Through the pin’s eye, round', 'the leg: it can’t unscrew'],
  },
});
