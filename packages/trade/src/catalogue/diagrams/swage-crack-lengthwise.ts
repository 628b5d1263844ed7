import { flaw, placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, note, shape } from '../../drawing/panels.ts';
import { swagedEye } from '../../drawing/rigging.ts';
import { wash } from '../../drawing/style.ts';

const terminal = placed(48, 0, 0, swagedEye());

export const swageCrackLengthwise = asFoundAndAsItShouldBe({
  key: 'swage-crack-lengthwise',
  title: 'Swaged terminal cracked lengthwise, and sound',
  description:
    'As found, the barrel of a swaged terminal has a crack along its length from the mouth, with rust where the wire enters: corrosion inside has swollen and split it. As it should be, the barrel is smooth and free of cracks and rust, and the wire enters it straight.',
  asFound: {
    shapes: [
      terminal,
      shape('M38 35 Q40 31 44 33 Q49 29 53 33 Q58 31 59 36 Z', wash),
      flaw('M46 37 L47 46 L44.5 54 L47 62 L45 71 L47 79 L46 84'),
      note('Rust at the', 84, 20),
      note('wire’s entry', 84, 31),
      arrow([80, 26], [62, 33]),
      note('Crack along', 86, 63),
      note('the barrel', 86, 74),
      arrow([82, 66], [49, 63], true),
    ],
    caption: ['Corrosion inside has split it:', 'renew it, look at the others'],
  },
  asItShouldBe: {
    shapes: [
      terminal,
      note('Wire enters', 84, 20),
      note('straight, clean', 84, 31),
      arrow([80, 24], [59, 28]),
      note('No line left', 86, 63),
      note('by a dye test', 86, 74),
      arrow([82, 66], [65, 66]),
    ],
    caption: ['Barrel smooth all round,', 'no rust at its mouth'],
  },
});
