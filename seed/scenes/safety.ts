import { ball, round } from './materials.ts';
import { bar, box, hexBolt, oval, screw, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { timber, yardBehind } from './surfaces.ts';
import { finger, label, lettering } from './surveyor.ts';
import { crack, glare, scatter, weep } from './wear.ts';

/** Hand flares and rockets laid out on a chart table. */
export function flares(p: Picture, year: number): void {
  timber(p);
  const paper = 'M-200 900L900 760L2200 1120V1700H-200z';
  solid(
    p,
    paper,
    p.linear(
      [
        [0, '#e9e7da'],
        [1, '#b9b7a8'],
      ],
      70,
    ),
    p.texture('grit', 0.8),
    0.4,
  );
  p.add(
    '<path d="M-100 1100Q500 960 900 1180T1900 1300M-100 1300Q600 1180 1000 1340T2000 1440" stroke="#7a9db3" stroke-width="8" fill="none" opacity=".7"/>',
  );
  const rows: [number, number, number, 'red' | 'orangeHose' | 'white', string, boolean][] = [
    [250, 260, 5, 'red', 'RED HAND FLARE', false],
    [220, 470, 2, 'red', 'RED HAND FLARE', true],
    [270, 680, 4, 'red', 'RED HAND FLARE', false],
    [240, 890, 1, 'white', 'PARACHUTE ROCKET', true],
    [290, 1110, 3, 'white', 'PARACHUTE ROCKET', false],
  ];
  rows.forEach(([x, y, turn, material, text, swollen], i) => {
    const w = material === 'white' ? 168 : 132;
    p.group(`transform="rotate(${turn} ${x} ${y})"`, () => {
      bar(p, [x, y], [x + 1320, y], w, material, { over: p.texture('dirt', 0.6), overOpacity: 0.6 });
      bar(p, [x + 1300, y], [x + 1450, y], w * 1.08, material === 'white' ? 'red' : 'black', { cap: true });
      bar(p, [x - 110, y], [x + 20, y], w * 0.9, 'black');
      const plate = box(x + 180, y - w * 0.36, 980, w * 0.72, 8);
      solid(p, plate, '#e7e2d2', p.texture('dirt', 0.5), 0.7);
      lettering(p, x + 440, y + 14, 44, text, '#1c1b19', 'font-weight="bold"');
      lettering(
        p,
        x + 930,
        y + 14,
        48,
        `EXP ${year - (i % 3)}-0${(i % 4) + 3}`,
        '#8a1510',
        'font-weight="bold"',
      );
      solid(
        p,
        plate,
        p.linear(
          [
            [0, '#ffffff', 0.35],
            [0.3, '#ffffff', 0],
            [1, '#000000', 0.5],
          ],
          90,
        ),
      );
      if (swollen) {
        solid(p, oval(x + 1220, y, 90, w * 0.62), ball(p, material));
        crack(p, x + 1160, y - 30, 12, 130, 5);
      }
    });
  });
  finger(p, 1290, 1160, -140, 1);
}

/** Service label on a raft canister. */
export function liferaftLabel(p: Picture, due: string): void {
  p.light = 'day';
  p.behind(() => yardBehind(p));
  p.backBlur = 6;
  const can = 'M-200 260Q1000 60 2200 260V1400Q1000 1560 -200 1400z';
  solid(
    p,
    can,
    p.linear(
      [
        [0, '#f7f6f1'],
        [0.3, '#e2e1da'],
        [0.75, '#a7a69e'],
        [1, '#55544e'],
      ],
      90,
    ),
    p.texture('bumpFine', 1),
    0.14,
  );
  solid(p, can, p.texture('dirt', 1.6), p.texture('streaks', 1.5), 0.3);
  p.add(
    '<path d="M-200 860Q1000 700 2200 860" stroke="#3a3933" stroke-width="16" fill="none"/><path d="M-200 876Q1000 716 2200 876" stroke="#fff" stroke-width="8" fill="none" opacity=".6"/>',
  );
  for (const x of [240, 1740]) {
    const strap = `M${x} 180Q${x + 20} 800 ${x} 1540h150Q${x + 170} 800 ${x + 150} 180z`;
    shadow(p, strap, 10, 16, 14);
    solid(p, strap, '#22252a', p.texture('brushed', 0.5, true), 0.6);
    hexBolt(p, x + 80, 860, 50, 'steel');
  }
  label(
    p,
    1000,
    1090,
    980,
    480,
    ['LIFERAFT  4 PERSONS', 'Serial 40 118', 'Last service 5 years ago', `NEXT SERVICE DUE ${due}`],
    {
      tone: '#e8d24a',
      turn: -1.5,
      size: 78,
    },
  );
  p.add(
    '<path d="M560 1270Q980 1210 1450 1250" stroke="#b21a12" stroke-width="14" fill="none" opacity=".8"/>',
  );
  lettering(p, 1000, 520, 150, 'LIFERAFT', '#b8321f', 'font-weight="bold" opacity=".85"');
  glare(p, 900, 300, 620, 60, 0.7);
  finger(p, 1420, 1320, -150, 0.9);
  weep(p, 330, 900, 300, 70, '#8a4a1c', 0.5);
}

/** Port sidelight with crazed lens. */
export function navLight(p: Picture): void {
  p.light = 'day';
  p.behind(() => {
    solid(
      p,
      box(-200, -200, 2400, 2000),
      p.linear(
        [
          [0, '#9fb6c8'],
          [0.6, '#dbe3e6'],
          [1, '#8b9397'],
        ],
        90,
      ),
    );
    solid(p, box(-200, 1050, 2400, 700), '#5f7480');
  });
  p.backBlur = 6;
  tube(p, 'M-160 1250C500 1120 1300 1110 2160 1260', 110, 'steel');
  tube(p, 'M1600 1180C1640 1400 1650 1500 1660 1700', 104, 'steel');
  const bracket = 'M760 1000H1240L1290 1210H710z';
  shadow(p, bracket, 18, 22, 18);
  solid(p, bracket, round(p, 'dullSteel', 0), p.texture('brushed', 0.8), 0.5);
  const shell =
    'M560 980V460Q580 300 820 270H1240Q1420 300 1440 460V980Q1400 1050 1300 1050H700Q600 1050 560 980z';
  shadow(p, shell, 34, 40, 34);
  solid(p, shell, round(p, 'black', 0), p.texture('bumpFine', 0.6), 0.4);
  solid(p, shell, p.texture('salt', 1.4), p.texture('dirt', 1), 0.3);
  const lens =
    'M640 900V500Q660 430 780 420H1120Q1220 430 1230 500V900Q1200 960 1110 960H760Q670 960 640 900z';
  solid(
    p,
    lens,
    p.linear([
      [0, '#7c1f22'],
      [0.25, '#f0a39d'],
      [0.4, '#ffe1dc'],
      [0.55, '#dc7b77'],
      [1, '#7f2526'],
    ]),
  );
  for (let k = 0; k < 9; k++)
    p.add(
      `<path d="M640 ${520 + k * 46}Q940 ${552 + k * 46} 1232 ${520 + k * 46}" stroke="#fff" stroke-width="7" opacity=".22" fill="none"/>`,
    );
  p.clip(lens, () => {
    for (let k = 0; k < 70; k++)
      crack(
        p,
        660 + p.random.between(0, 560),
        450 + p.random.between(0, 480),
        p.random.between(0, 360),
        p.random.between(40, 150),
        2.4,
        '#4a0d0e',
      );
    solid(p, lens, p.texture('salt', 1), p.texture('dirt', 0.9), 0.5);
  });
  solid(
    p,
    oval(930, 700, 70, 110),
    p.radial(
      [
        [0, '#fff6ea', 0.9],
        [0.4, '#ffd0b8', 0.5],
        [1, '#ffd0b8', 0],
      ],
      0.5,
      0.5,
      0.5,
    ),
  );
  screw(p, 620, 400, 28);
  screw(p, 1370, 400, 28);
  weep(p, 1380, 1040, 240, 50, '#7a3f1b', 0.6);
  scatter(p, 10, [620, 440, 560, 400], (x, y, s) => glare(p, x, y, 10 + s * 20, 6 + s * 8, 0.7));
  finger(p, 1260, 860, -160, 0.9);
}
