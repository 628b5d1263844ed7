import { flaw, placed, seacock, wormClamp } from '../../drawing/fittings.ts';
import {
  arrow,
  asFoundAndAsItShouldBe,
  circle,
  course,
  cut,
  note,
  shape,
  thin,
  tube,
} from '../../drawing/panels.ts';

const hull = [
  cut([
    [3, 124],
    [52, 124],
    [52, 134],
    [3, 134],
  ]),
  cut([
    [68, 124],
    [147, 124],
    [147, 134],
    [68, 134],
  ]),
  note('Sea', 6, 146),
  shape('M38 134 H82 Q78 140 68 140 H52 Q42 140 38 134 Z'),
  tube('M60 78 V34 Q60 18 76 18 H147', 20),
  placed(60, 72, 90, wormClamp(20)),
  placed(60, 60, 90, wormClamp(20)),
];

export const seacockLeverAndPlug = asFoundAndAsItShouldBe({
  key: 'seacock-lever-and-plug',
  title: 'Seacock that cannot be closed, and one that can, with its plug',
  description:
    'A seacock on the bottom from the side. As found: its lever has rusted off and only the stub of its stem remains; no plug lies ready. As it should be: the lever swings freely through a quarter turn from in line with the pipe, open, to across it, closed; a softwood plug of the right size hangs by it on a lanyard.',
  asFound: {
    shapes: [
      ...hull,
      placed(60, 124, 0, seacock(1.1, false)),
      flaw('M58 106 L60 100 L63 99 L61 103 L64 104'),
      arrow([100, 84], [67, 99], true),
      note('Lever gone', 92, 78),
      note('No plug', 92, 112),
    ],
    caption: ['Cannot be closed;', 'nothing to stop a hole'],
  },
  asItShouldBe: {
    shapes: [
      ...hull,
      placed(60, 124, 0, seacock(1.1)),
      thin('M62.5 99 H96 Q99 99 99 102 Q99 105 96 105 H62.5', true),
      course([
        [70, 68],
        [92, 72],
        [96, 95],
      ]),
      note('Free', 98, 74),
      thin('M42 120.5 Q20 116 22 88'),
      circle(42, 120.5, 1.5),
      shape('M14 64 H30 L26 92 H18 Z'),
      thin('M18 64 V92 M22 64 V92 M26 64 V92'),
      note('Plug', 22, 57, 'middle'),
    ],
    caption: ['Lever free a quarter turn,', 'plug tied beside it'],
  },
});
