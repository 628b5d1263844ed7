import { round } from './materials.ts';
import { bar, box, hexBolt, oval, screw, shadow, solid } from './parts.ts';
import type { Picture } from './picture.ts';
import { antifoul, gelcoat, nonSlip } from './surfaces.ts';
import { finger, handMeter, lettering, pencil, steelRule } from './surveyor.ts';
import { crack, drop, glare, scatter, weep } from './wear.ts';

function blister(p: Picture, x: number, y: number, r: number): void {
  p.add(
    `<ellipse cx="${x + r * 0.3}" cy="${y + r * 0.42}" rx="${r * 1.05}" ry="${r * 0.95}" fill="#1a0605" opacity=".55"/>`,
    `<ellipse cx="${x}" cy="${y}" rx="${r}" ry="${r * 0.92}" fill="${p.radial(
      [
        [0, '#d98a7a'],
        [0.3, '#a64a3c'],
        [0.8, '#6d2219'],
        [1, '#45120d'],
      ],
      0.34,
      0.28,
      0.8,
    )}"/>`,
    `<ellipse cx="${x - r * 0.34}" cy="${y - r * 0.36}" rx="${r * 0.2}" ry="${r * 0.13}" fill="#ffe6de" opacity=".7" transform="rotate(-35 ${x} ${y})"/>`,
  );
}

/** Blistered antifouled bottom with a rule. */
export function hullBlisters(p: Picture): void {
  p.light = 'day';
  antifoul(p);
  scatter(p, 46, [180, 80, 1600, 950], (x, y, s) => blister(p, x, y, 12 + s * s * 46));
  for (const [x, y] of [
    [760, 520],
    [1180, 380],
    [1020, 760],
  ] as const) {
    const chip = `M${x - 60} ${y - 20}L${x - 12} ${y - 62}L${x + 56} ${y - 38}L${x + 66} ${y + 28}L${x + 8} ${y + 60}L${x - 48} ${y + 36}z`;
    shadow(p, chip, 0, 0, 8, 0.6);
    solid(p, chip, '#b9ad8c', p.texture('bump', 0.5), 0.8);
    solid(
      p,
      chip,
      p.linear(
        [
          [0, '#000000', 0.55],
          [0.4, '#000000', 0],
        ],
        60,
      ),
    );
    drop(p, x + 4, y + 36, 13);
    weep(p, x, y + 44, 280, 40, '#2c0d08', 0.6);
    weep(p, x + 6, y + 44, 240, 18, '#d9b08a', 0.35);
  }
  p.add(
    `<path d="M140 60L1850 40L1880 1030L120 1060z" fill="none" stroke="#f1efe6" stroke-width="11" opacity=".75" stroke-dasharray="230 6 120 4"/>`,
  );
  lettering(p, 1650, 200, 90, '40', '#f3f1e8', 'opacity=".85" transform="rotate(-6 1650 200)"');
  steelRule(p, 320, 1180, -3, 21);
}

/** Meter held against a hull or deck. */
export function moistureMeter(p: Picture, where: 'hull' | 'deck', reading: string): void {
  p.light = 'day';
  if (where === 'hull') {
    antifoul(p, '#74362c', '#3a1714');
    scatter(p, 26, [60, 60, 1880, 1300], (x, y, s) => blister(p, x, y, 8 + s * s * 34));
    p.add(
      '<path d="M130 90L1830 60L1900 1390" fill="none" stroke="#f1efe6" stroke-width="11" opacity=".6" stroke-dasharray="200 8 90 5"/>',
    );
  } else {
    nonSlip(p);
    for (let k = 0; k < 4; k++) {
      for (let j = 0; j < 2; j++) {
        const x = 240 + k * 480;
        const y = 220 + j * 1010;
        p.add(
          `<path d="M${x - 30} ${y}h60M${x} ${y - 30}v60" stroke="#1f3d7a" stroke-width="9" opacity=".8"/>`,
        );
        lettering(p, x + 66, y + 20, 56, String(k * 2 + j + 1), '#1f3d7a', 'opacity=".8"');
      }
    }
  }
  handMeter(p, 930, 680, where === 'hull' ? -10 : 8, reading, 'REL', 1.3);
  // The hand that holds it: thumb on the near edge, fingers behind.
  finger(p, 1180, 900, -170, 1.5);
  finger(p, 660, 820, -14, 1.2);
}

/** Bolt of a genoa track with brown water coming out. */
export function deckCoreWeep(p: Picture): void {
  p.light = 'day';
  nonSlip(p);
  const rail = box(-200, 520, 2400, 230, 8);
  p.group('transform="rotate(-6 1000 700)"', () => {
    shadow(p, rail, 10, 40, 22, 0.6);
    solid(
      p,
      rail,
      p.linear(
        [
          [0, '#8b9196'],
          [0.12, '#e3e7ea'],
          [0.2, '#5b6167'],
          [0.5, '#a9b0b5'],
          [0.78, '#5c6268'],
          [0.86, '#dce1e4'],
          [1, '#3b4046'],
        ],
        90,
      ),
      p.texture('brushed', 1),
      0.6,
    );
    for (let k = 0; k < 6; k++) {
      const x = 10 + k * 400;
      solid(p, oval(x, 636, 62, 60), '#22262a');
      screw(p, x, 634, 50);
      if (k % 2 === 0) solid(p, oval(x + 200, 636, 40, 38), '#15181b');
    }
    p.add(`<path d="M-200 756H2200" stroke="#3a2a18" stroke-width="12" opacity=".5"/>`);
  });
  for (const x of [840, 1240]) {
    weep(p, x, 730, 420, 130, '#5a2c0c', 0.75);
    weep(p, x + 30, 740, 300, 70, '#3c1b07', 0.7);
    solid(
      p,
      oval(x + 10, 800, 120, 50),
      p.radial(
        [
          [0, '#3a1b08', 0.8],
          [1, '#6d3a14', 0],
        ],
        0.5,
        0.5,
        0.5,
      ),
    );
  }
  drop(p, 870, 1080, 22);
  drop(p, 1290, 1010, 16);
  glare(p, 866, 800, 60, 16, 0.8);
  finger(p, 960, 850, -128, 1);
}

/** Base of a guardrail stanchion with star cracks. */
export function stanchionCrack(p: Picture): void {
  p.light = 'day';
  p.behind(() => gelcoat(p, '#e1ded2', '#b5b2a6'));
  p.backBlur = 0;
  solid(
    p,
    'M-200 -200H2200V420Q1000 360 -200 470z',
    p.linear(
      [
        [0, '#8fa3b3'],
        [0.7, '#c4ccd0'],
        [1, '#9a9b93'],
      ],
      90,
    ),
  );
  solid(p, 'M-200 330H2200V420Q1000 360 -200 470z', '#4c4a44');
  p.add(`<path d="M-200 440Q1000 330 2200 392" stroke="#efede4" stroke-width="40" fill="none"/>`);
  const base = 'M600 900Q590 780 780 760H1240Q1430 780 1420 900Q1400 1000 1240 1010H780Q620 1000 600 900z';
  for (const [x, y, a, l] of [
    [700, 990, 128, 330],
    [820, 1008, 104, 420],
    [960, 1012, 86, 300],
    [620, 900, 176, 330],
    [1130, 1010, 66, 340],
    [1300, 1000, 38, 260],
    [640, 950, 150, 210],
  ] as const) {
    crack(p, x, y, a, l, 6, '#3a2a1a');
    weep(p, x, y, l * 0.5, 30, '#6d4a24', 0.3);
  }
  shadow(p, base, 30, 36, 26, 0.65);
  solid(
    p,
    base,
    p.linear(
      [
        [0, '#f2f4f5'],
        [0.25, '#9da4a9'],
        [0.5, '#dfe4e7'],
        [1, '#5a6066'],
      ],
      70,
    ),
    p.texture('brushed', 0.8),
    0.5,
  );
  for (const [x, y] of [
    [700, 850],
    [1320, 850],
    [740, 950],
    [1280, 950],
  ] as const) {
    solid(p, oval(x, y, 46, 34), '#2b2f33');
    screw(p, x, y - 3, 34);
  }
  shadow(p, oval(1010, 850, 150, 66), 12, 16, 14, 0.6);
  solid(p, oval(1010, 850, 148, 62), round(p, 'steel', 0));
  bar(p, [1010, 850], [1040, -200], 176, 'steel', {
    over: p.texture('brushed', 0.8, true),
    overOpacity: 0.4,
  });
  hexBolt(p, 1016, 740, 30, 'steel');
  weep(p, 1340, 980, 260, 90, '#8a4a1c', 0.6);
  solid(p, 'M610 1000Q1000 1050 1410 1000L1400 1016Q1000 1068 620 1016z', '#0b0908');
  pencil(p, 800, 1120, 34);
  glare(p, 960, 320, 26, 260, 0.7);
}
