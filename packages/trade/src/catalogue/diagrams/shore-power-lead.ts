import { cable, sparks } from '../../drawing/electrics.ts';
import { placed } from '../../drawing/fittings.ts';
import { arrow, asFoundAndAsItShouldBe, circle, note, shape, thin, waterline } from '../../drawing/panels.ts';
import { hairline, signal } from '../../drawing/style.ts';

const scene = [
  waterline(126, 0, 150),
  shape('M-2 84 H38 V92 H-2 Z'),
  shape('M24 92 H30 V152 H24 Z'),
  shape('M10 34 Q10 30 14 30 H24 Q28 30 28 34 V84 H10 Z'),
  // The boat's side with her coaming and a hatch.
  shape('M96 152 C92 128 88 106 86 82 H152 V152 Z'),
  shape('M98 82 L104 52 H152 V82 Z'),
  thin('M87 90 H152'),
];

export const shorePowerLead = asFoundAndAsItShouldBe({
  key: 'shore-power-lead',
  title: 'Improvised shore-power lead, and proper cord and inlet',
  description:
    'A boat alongside a pontoon with its shore-power post. As found, a household lead with a taped joint hangs in the water and begins in a household plug and goes in through an open port. As it should be, one unbroken cord with weatherproof connectors runs from the post to the boat’s own inlet, in a slack loop clear of the water.',
  asFound: {
    shapes: [
      ...scene,
      circle(126, 67, 9),
      cable('M28 52 H40 C54 52 42 126 62 128', 4),
      cable('M74 128 C92 128 70 34 98 40 S112 64 124 67', 4),
      placed(
        68,
        128,
        0,
        shape('M-11 -6 H0 V6 H-11 Z M0 -5 H10 V5 H0 Z', hairline),
        thin('M-5 -6 V6 M-2 -6 V6 M3 -5 V5'),
      ),
      sparks([68, 124], 8, signal),
      shape('M28 45 H37 V59 H28 Z', hairline),
      note('Taped joint', 34, 146),
      note('Open port', 100, 20),
      arrow([126, 26], [126, 55], true),
      note('Household plug', 6, 20),
      arrow([36, 26], [33, 42], true),
    ],
    caption: ['Wet, thin, with no sure', 'earth: shock and fire'],
  },
  asItShouldBe: {
    shapes: [
      ...scene,
      circle(126, 67, 9),
      thin('M118 67 H134 M126 59 V75'),
      cable('M38 52 C64 52 46 112 66 110 S86 66 92 67', 5),
      shape('M28 44 H34 V60 H28 Z M34 46 H42 V58 H34 Z', hairline),
      shape('M92 61 H101 V73 H92 Z M99 59 H104 V75 H99 Z', hairline),
      shape('M98 58 Q97 47 106 46 L107 52 Q103 54 104 58 Z'),
      note('Inlet with its cap', 68, 20),
      arrow([106, 26], [103, 43]),
      note('One cord', 40, 146),
    ],
    caption: ['Weatherproof ends locked on,', 'slack, clear of the water'],
  },
});
