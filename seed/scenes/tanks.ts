import { ball, round } from './materials.ts';
import { bar, box, hexBolt, hoseClip, oval, screw, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { bilgePaint, darkSpace } from './surfaces.ts';
import { finger, label, pencil } from './surveyor.ts';
import { crack, drop, glare, scatter, weep } from './wear.ts';

/** Float switch held down in dirty bilge water. */
export function bilgeFloat(p: Picture): void {
  p.behind(() => bilgePaint(p));
  p.backBlur = 1;
  solid(
    p,
    'M-200 -200H700L420 900L-200 1100z',
    p.linear(
      [
        [0, '#8a887d'],
        [1, '#4a473e'],
      ],
      40,
    ),
    p.texture('bump', 1.4),
    0.6,
  );
  const water = 'M-200 860C300 780 1400 760 2200 880V1700H-200z';
  solid(
    p,
    water,
    p.linear(
      [
        [0, '#4c4a3a'],
        [0.3, '#2a2c24'],
        [1, '#0c0e0c'],
      ],
      90,
    ),
  );
  for (let k = 0; k < 26; k++) {
    const x = p.random.between(0, 1900);
    const y = p.random.between(880, 1450);
    const hue = ['#7d6fa0', '#5f8f8a', '#a08a5a', '#8a5f6f'][k % 4] ?? '#7d6fa0';
    p.add(
      `<ellipse cx="${x}" cy="${y}" rx="${p.random.between(60, 260)}" ry="${p.random.between(8, 30)}" fill="${hue}" opacity=".22"/>`,
    );
  }
  bar(p, [1500, -160], [1440, 900], 190, 'whiteHose', { over: p.texture('dirt', 0.8) });
  const pump = box(1260, 620, 380, 400, 60);
  shadow(p, pump, 26, 30, 26, 0.7);
  solid(p, pump, round(p, 'white', 0), p.texture('dirt', 0.8), 0.8);
  solid(p, box(1250, 900, 400, 140, 20), round(p, 'red', 0), p.texture('dirt', 0.7), 0.8);
  for (let k = 0; k < 9; k++)
    p.add(`<path d="M${1284 + k * 42} 920v100" stroke="#180303" stroke-width="12"/>`);
  const mount = box(430, 900, 260, 150, 20);
  shadow(p, mount, 14, 18, 16, 0.7);
  solid(p, mount, ball(p, 'black'), p.texture('dirt', 0.5), 0.6);
  p.group('transform="rotate(9 640 960)"', () => {
    const arm = 'M600 900Q640 850 760 860H1080Q1180 880 1180 960T1080 1050H760Q640 1050 600 1010z';
    shadow(p, arm, 18, 30, 22, 0.75);
    solid(
      p,
      arm,
      p.linear(
        [
          [0, '#dcdad2'],
          [0.3, '#b6b3a8'],
          [1, '#5a574e'],
        ],
        80,
      ),
      p.texture('bumpFine', 0.6),
      0.3,
    );
    solid(p, arm, p.texture('dirt', 0.7), p.texture('dirt', 0.5), 0.7);
  });
  tube(p, 'M520 920C480 700 600 500 560 200S500 -40 520 -160', 26, 'black', { cap: 'round' });
  tube(p, 'M550 920C520 700 650 520 610 240S560 -40 580 -160', 26, 'yellowTube', { cap: 'round' });
  tube(p, 'M560 800C720 760 800 900 900 1000S1060 1040 1100 900S980 760 880 830', 22, 'white', {
    cap: 'round',
  });
  const sludge =
    'M500 1040C700 960 900 1080 1120 1040S1300 1120 1180 1180S640 1220 520 1150S420 1080 500 1040z';
  solid(p, sludge, '#0d0b08', p.texture('bump', 0.7), 0.9);
  glare(p, 760, 1110, 120, 14, 0.7);
  glare(p, 1120, 1290, 300, 18, 0.4);
  finger(p, 1060, 880, 150, 1);
}

/** Fuel tank with its plate, outlet and a plastic tube. */
export function fuelTankLabel(p: Picture): void {
  p.behind(() => darkSpace(p));
  const tank = box(-200, 120, 1900, 1700, 40);
  solid(
    p,
    tank,
    p.linear(
      [
        [0, '#8f9aa0'],
        [0.35, '#66737a'],
        [1, '#2c363b'],
      ],
      60,
    ),
    p.texture('bump', 1.2),
    0.4,
  );
  solid(p, tank, p.texture('dirt', 1.5), p.texture('rust', 1.7), 0.4);
  p.add(
    '<path d="M-200 120H1700V1700" fill="none" stroke="#2b3338" stroke-width="34"/><path d="M-200 108H1700" stroke="#c5ced2" stroke-width="8" opacity=".6"/>',
  );
  for (let k = 0; k < 46; k++)
    p.add(
      `<path d="M${1650 + (k % 2) * 5} ${150 + k * 34}q26 10 46 0" stroke="#8b969b" stroke-width="9" fill="none" opacity=".7"/>`,
    );
  label(p, 660, 560, 820, 460, ['DIESEL FUEL', 'Capacity 640 l', 'Test pressure 20 kPa', 'Built 1998'], {
    tone: '#c9cac2',
    turn: -1,
    size: 70,
  });
  for (const [x, y] of [
    [280, 360],
    [1040, 350],
    [284, 764],
    [1046, 756],
  ] as const)
    screw(p, x, y, 20);
  bar(p, [1180, 1120], [1460, 1120], 150, 'brass', { over: p.texture('dirt', 0.5) });
  hexBolt(p, 1250, 1120, 92, 'brass');
  p.group('transform="rotate(-60 1390 1100)"', () => {
    solid(p, box(1360, 1070, 300, 60, 24), round(p, 'red'));
  });
  tube(p, 'M1440 1120C1620 1120 1700 1200 1740 1360S1840 1600 2160 1590', 120, 'yellowTube', {
    over: p.texture('dirt', 0.6),
    overOpacity: 0.4,
  });
  hoseClip(p, 1520, 1126, 4, 132, true);
  scatter(p, 14, [1560, 1120, 180, 220], (x, y, s) => crack(p, x, y, 40 + s * 50, 24 + s * 36, 3, '#5a3c0a'));
  weep(p, 1240, 1220, 300, 110, '#3b2207', 0.7);
  drop(p, 1470, 1220, 20);
  finger(p, 1620, 1180, -142, 1);
  glare(p, 480, 250, 460, 40, 0.35);
}

/** Petrol fill hose cracked under its deck plate. */
export function fuelHoseCracked(p: Picture): void {
  p.behind(() => darkSpace(p, false));
  p.backBlur = 4;
  const deck = 'M-200 -200H2200V200L-200 280z';
  solid(
    p,
    deck,
    p.linear(
      [
        [0, '#d9d0b3'],
        [1, '#8d8362'],
      ],
      90,
    ),
    p.texture('bump', 1),
    0.9,
  );
  bar(p, [1000, 120], [1000, 470], 300, 'steel', { over: p.texture('salt', 0.9), overOpacity: 0.5 });
  solid(p, oval(1000, 240, 290, 62), ball(p, 'dullSteel'));
  for (const x of [790, 1210]) hexBolt(p, x, 250, 36, 'dullSteel');
  const run = 'M1000 380C1000 760 960 900 760 1060S300 1240 -160 1250';
  tube(p, run, 400, 'rubber', { over: p.texture('bumpFine', 0.7), overOpacity: 0.4 });
  hoseClip(p, 1000, 470, 90, 410, true);
  for (let k = 0; k < 24; k++)
    crack(
      p,
      820 + p.random.between(0, 250),
      800 + p.random.between(0, 220),
      -42,
      p.random.between(60, 260),
      5,
      '#000000',
    );
  const open = 'M800 780C880 800 1000 890 1060 990C960 960 850 880 800 780z';
  solid(p, open, '#020202');
  p.add(`<path d="${open}" fill="none" stroke="#a9adaf" stroke-width="6" opacity=".7"/>`);
  for (let k = 0; k < 12; k++)
    p.add(
      `<path d="M${826 + k * 17} ${800 + k * 12}l-6 26" stroke="#d5c9a5" stroke-width="4.5" opacity=".8"/>`,
    );
  tube(p, 'M1210 262C1340 420 1330 560 1270 640', 20, 'green', { cap: 'round' });
  tube(p, 'M1230 860C1320 980 1500 1120 1600 1700', 20, 'green', { cap: 'round' });
  for (let k = 0; k < 7; k++) {
    p.add(
      `<path d="M1270 640l${-20 + k * 8} ${50 + (k % 3) * 14}M1230 860l${-22 + k * 8} ${-46 - (k % 3) * 10}" stroke="#d58b4c" stroke-width="4"/>`,
    );
  }
  weep(p, 930, 960, 360, 110, '#7a5a1a', 0.5);
  drop(p, 900, 1180, 18);
  finger(p, 1090, 960, -160, 1);
  pencil(p, 1290, 700, 28);
}
