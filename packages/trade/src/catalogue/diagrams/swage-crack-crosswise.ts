import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, note, thin } from '../../drawing/panels.ts';
import { swagedEye } from '../../drawing/rigging.ts';

const terminal = placed(48, 0, 0, swagedEye());

export const swageCrackCrosswise = asFoundAndAsItShouldBe({
  key: 'swage-crack-crosswise',
  title: 'Swaged terminal cracked crosswise, and sound',
  description:
    'As found, the barrel of a swaged terminal has a crack across it, at right angles to the pull; bending to and fro has fatigued it and it can part without warning. As it should be, the terminal has no mark across it and the stay pulls in its line.',
  asFound: {
    shapes: [
      thin('M34 36 Q31 18 20 -2 M52 36 Q51 16 36 -2', true),
      thin('M44 36 Q45 18 60 -2 M62 36 Q65 18 76 -2', true),
      terminal,
      flaw('M33 84 L38 82 L42 85.5 L47 83 L51 86 L54 84'),
      arrow([110, 12], [88, 12]),
      arrow([112, 12], [134, 12]),
      note('Bends to and fro', 76, 31),
      note('Crack across', 86, 73),
      note('the pull', 86, 84),
      arrow([82, 78], [57, 84], true),
    ],
    caption: ['Fatigue: it parts without', 'warning. Not to sail'],
  },
  asItShouldBe: {
    shapes: [
      terminal,
      arrow([92, 40], [92, 10]),
      note('Pull in line', 98, 28),
      note('No mark across', 78, 73),
      note('the barrel', 78, 84),
      arrow([74, 78], [65, 80]),
    ],
    caption: ['No mark across it, and free', 'to follow the stay'],
  },
});
