import { round } from './materials.ts';
import { box, oval, shadow, solid } from './parts.ts';
import type { Picture } from './picture.ts';
import { paintedSteel, yardBehind } from './surfaces.ts';
import { finger, handMeter, lettering, pencil, steelRule } from './surveyor.ts';
import { glare, scatter, weep } from './wear.ts';

/** Thickness gauge on cleaned steel. */
export function utGauge(p: Picture): void {
  p.light = 'day';
  paintedSteel(p, '#2b3036', '#15181b');
  scatter(p, 60, [0, 600, 2000, 900], (x, y, s) => solid(p, oval(x, y, 5 + s * 16, 4 + s * 12), '#6b3a1c'));
  for (const [x, y] of [
    [560, 980],
    [1020, 1130],
    [1480, 990],
  ] as const) {
    const spot = oval(x, y, 150, 130);
    solid(
      p,
      spot,
      p.radial([
        [0, '#c3c8cb'],
        [0.7, '#878d91'],
        [1, '#3b3f42'],
      ]),
      p.texture('brushed', 0.5),
      0.8,
    );
    solid(p, spot, p.texture('rust', 0.5));
  }
  lettering(p, 560, 800, 88, '4.4', '#f0eee4', 'transform="rotate(-8 560 800)"');
  lettering(p, 1490, 820, 88, '4.6', '#f0eee4', 'transform="rotate(5 1490 820)"');
  p.add(
    `<path d="M300 620L1760 600" stroke="#f0eee4" stroke-width="10" opacity=".7" stroke-dasharray="160 7"/>`,
  );
  lettering(p, 420, 590, 80, 'FR 12', '#f0eee4', 'opacity=".85"');
  p.add(`<path d="M1010 600C980 760 1060 900 1020 1080" fill="none" stroke="#08090a" stroke-width="28"/>`);
  solid(p, box(962, 1010, 120, 130, 24), round(p, 'black', 0));
  solid(p, box(950, 1120, 144, 30, 8), round(p, 'steel', 0));
  solid(
    p,
    oval(1022, 1172, 130, 34),
    p.radial([
      [0, '#d5e9ef', 0.7],
      [1, '#d5e9ef', 0.05],
    ]),
  );
  handMeter(p, 1010, 330, 3, '4.3', 'mm', 0.9);
  finger(p, 960, 1080, 24, 1);
}

/** Pitted plate after brushing, rule below. */
export function platePitting(p: Picture): void {
  p.light = 'day';
  paintedSteel(p, '#23282c', '#101214');
  const bare = 'M180 260C420 80 1500 60 1780 260S1900 900 1640 1060S460 1120 260 960S60 420 180 260z';
  solid(
    p,
    bare,
    p.linear(
      [
        [0, '#90959a'],
        [0.5, '#6a6f73'],
        [1, '#474a4d'],
      ],
      70,
    ),
    p.texture('brushed', 0.8),
    0.8,
  );
  solid(p, bare, p.texture('bump', 1), p.texture('rust', 1.2), 0.7);
  scatter(p, 120, [300, 220, 1380, 760], (x, y, s) => {
    const r = 7 + s * s * 44;
    p.add(
      `<ellipse cx="${x}" cy="${y}" rx="${r}" ry="${r * 0.84}" fill="${p.radial(
        [
          [0, '#0c0806'],
          [0.6, '#2d1a10'],
          [0.86, '#5b3a24'],
          [1, '#b9b4ad', 0.6],
        ],
        0.42,
        0.38,
        0.62,
      )}"/>`,
    );
  });
  steelRule(p, 420, 1200, -2, 17);
  pencil(p, 1180, 560, 30);
}

/** Anode welded to a hull and painted over with bitumen. */
export function hullAnode(p: Picture): void {
  p.light = 'day';
  p.behind(() => yardBehind(p));
  solid(
    p,
    'M-200 -200H2200V1240Q1000 1320 -200 1180z',
    p.linear(
      [
        [0, '#1e2124'],
        [0.6, '#121416'],
        [1, '#050606'],
      ],
      80,
    ),
    p.texture('bump', 1.3),
    0.8,
  );
  solid(
    p,
    'M-200 -200H2200V1240Q1000 1320 -200 1180z',
    p.texture('rust', 1.6),
    p.texture('bumpFine', 0.9),
    0.4,
  );
  for (const x of [330, 1560]) {
    const tab = box(x, 650, 170, 120, 8);
    solid(
      p,
      tab,
      p.linear(
        [
          [0, '#3a3d40'],
          [1, '#141516'],
        ],
        80,
      ),
      p.texture('bump', 0.6),
      0.7,
    );
    p.add(
      `<path d="M${x} 642h170M${x} 776h170" stroke="#24282b" stroke-width="26" stroke-dasharray="15 5" stroke-linecap="round"/>`,
    );
  }
  const block =
    'M460 560Q440 540 480 520L1560 500Q1600 510 1590 560L1620 830Q1620 890 1560 900L520 920Q450 910 450 850z';
  shadow(p, block, 30, 60, 34, 0.8);
  solid(
    p,
    block,
    p.linear(
      [
        [0, '#44484b'],
        [0.25, '#26292b'],
        [1, '#0a0b0b'],
      ],
      80,
    ),
    p.texture('bump', 1),
    0.9,
  );
  glare(p, 900, 580, 420, 40, 0.4);
  const flake = 'M1240 640l90 -40l100 50l10 90l-110 50l-100 -60z';
  solid(p, flake, '#a6a9a6', p.texture('bump', 0.4), 0.9);
  weep(p, 1330, 770, 300, 50, '#c9c4b8', 0.35);
  scatter(p, 40, [1500, 900, 480, 260], (x, y, s) =>
    solid(p, oval(x, y, 6 + s * 22, 5 + s * 17), p.texture('rustPlate', 0.4)),
  );
  finger(p, 1380, 740, -150, 1);
}

/** Lifted paint and rust along a bulwark's foot. */
export function deckRust(p: Picture): void {
  p.light = 'day';
  p.behind(() => yardBehind(p));
  solid(
    p,
    'M-200 -60H2200V700L-200 800z',
    p.linear(
      [
        [0, '#f0eee6'],
        [1, '#b5b3aa'],
      ],
      85,
    ),
    p.texture('streaks', 1.4),
    0.5,
  );
  solid(
    p,
    'M-200 800L2200 700V1700H-200z',
    p.linear(
      [
        [0, '#3f5a52'],
        [1, '#6c8a80'],
      ],
      80,
    ),
    p.texture('grit', 0.9),
    0.9,
  );
  const band =
    'M-200 690Q100 640 420 700T1000 640T1560 660T2200 590V830Q1800 800 1500 880T900 860T300 930T-200 880z';
  shadow(p, band, 4, 10, 10, 0.6);
  solid(p, band, p.texture('rustPlate', 1.1), p.texture('bump', 1), 0.6);
  scatter(p, 34, [-60, 600, 2050, 320], (x, y, s) => {
    const w = 30 + s * 90;
    const flake = `M${x} ${y}l${w * 0.6} ${-w * 0.3}l${w * 0.7} ${w * 0.2}l${-w * 0.2} ${w * 0.5}l${-w * 0.8} ${w * 0.1}z`;
    shadow(p, flake, 6, 12, 5, 0.7);
    solid(p, flake, y < 760 ? '#dfddd2' : '#58776d', p.texture('bump', 0.5), 0.5);
  });
  const port = box(860, 560, 330, 170, 70);
  solid(p, port, '#0b0a09');
  p.add(`<path d="${port}" fill="none" stroke="#5a2f17" stroke-width="30"/>`);
  solid(p, 'M860 680q90 -60 160 -10t170 0v60h-330z', p.texture('rustPlate', 0.7));
  weep(p, 400, 800, 420, 160, '#7a3f1b', 0.7);
  weep(p, 1500, 820, 380, 120, '#7a3f1b', 0.7);
  steelRule(p, 360, 1180, -5, 14);
  finger(p, 1180, 720, -142, 0.9);
}
