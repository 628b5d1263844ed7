import { casting, engineSpace, pulley } from './engine-parts.ts';
import { ball, type MaterialName, round } from './materials.ts';
import { bar, box, hexBolt, hoseClip, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { finger, label, lettering } from './surveyor.ts';
import { crack, drop, glare, scatter, weep } from './wear.ts';

/** Front of a small diesel: pulleys, belt, pump; `focus` picks what the picture is about. */
export function engineFront(p: Picture, focus: 'whole' | 'belt'): void {
  engineSpace(p);
  const paint: MaterialName = focus === 'belt' ? 'engineGreen' : 'engineGrey';
  const big = focus === 'belt' ? 'transform="translate(-620 -330) scale(1.5)"' : '';
  p.group(big, () => {
    casting(p, 'M420 380H1540L1620 620V1320L1500 1460H480L380 1320V560z', paint);
    casting(p, box(560, 170, 860, 260, 40), paint, 90);
    for (let k = 0; k < 5; k++) hexBolt(p, 640 + k * 175, 300, 34, 'dullSteel');
    for (const [x, y] of [
      [470, 640],
      [470, 900],
      [470, 1180],
      [1540, 640],
      [1540, 900],
      [1540, 1180],
    ] as const) {
      hexBolt(p, x, y, 32, 'dullSteel');
    }
    casting(p, oval(1450, 520, 200), 'zinc');
    casting(p, oval(620, 820, 170), 'bronze');
    const belt = 'M830 640L1300 330Q1450 250 1590 380T1640 620L1300 1300Q1100 1440 880 1300T780 760z';
    p.add(
      `<path d="${belt}" fill="none" stroke="#000" stroke-width="74" opacity=".5" transform="translate(16 24)"/>`,
      `<path d="${belt}" fill="none" stroke="#161718" stroke-width="60"/>`,
      `<path d="${belt}" fill="none" stroke="#4a4c4e" stroke-width="30" opacity=".8"/>`,
      `<path d="${belt}" fill="none" stroke="#0a0a0b" stroke-width="56" stroke-dasharray="5 26" opacity=".8"/>`,
    );
    pulley(p, 1060, 1140, 240, 'dullSteel');
    pulley(p, 930, 690, 150, 'dullSteel');
    pulley(p, 1460, 510, 130, 'dullSteel');
    tube(p, 'M620 700C520 480 360 420 200 520S60 900 -120 980', 96, 'rubber', {
      over: p.texture('dirt', 0.6),
    });
    hoseClip(p, 560, 566, 60, 104, focus === 'belt');
    tube(p, 'M700 220C640 60 380 0 -120 60', 110, 'rubber');
    hoseClip(p, 560, 70, 6, 118);
    tube(p, 'M1560 420C1760 380 1900 300 2160 320', 36, 'red', { cap: 'round' });
    solid(p, oval(900, 760, 460, 300), p.texture('rust', 0.9));
    weep(p, 620, 960, 320, 120, '#dfe3e2', 0.5);
    if (focus === 'belt') {
      scatter(p, 900, [900, 260, 820, 760], (x, y, s) =>
        p.add(`<circle cx="${x}" cy="${y}" r="${1.5 + s * 3.4}" fill="#080808" opacity="${0.5 + s * 0.4}"/>`),
      );
      scatter(p, 18, [1380, 300, 230, 90], (x, y, s) => crack(p, x, y, 70, 24 + s * 26, 4, '#000000'));
    } else {
      label(p, 1020, 300, 320, 110, ['28 kW  1:2.14'], { tone: '#b9bdb9' });
    }
  });
  if (focus === 'belt') finger(p, 1560, 360, 150, 1.1);
  glare(p, 900, 420, 220, 50, 0.35);
}

/** Raw-water pump with a drop under its telltale and salt below. */
export function pumpWeeping(p: Picture): void {
  engineSpace(p);
  casting(p, 'M1060 -200H2200V1700H1180L1080 900z', 'engineGrey', 0);
  const body = 'M470 420Q480 300 760 290H1160V960H760Q500 950 470 820z';
  casting(p, body, 'bronze', 70);
  shadow(p, oval(700, 620, 330), 20, 30, 24);
  solid(p, oval(700, 620, 326), ball(p, 'bronze'), p.texture('bump', 0.8), 0.6);
  solid(p, oval(700, 620, 286), ball(p, 'brass'), p.texture('brushed', 0.8), 0.6);
  for (let k = 0; k < 6; k++)
    hexBolt(p, 700 + Math.cos(k * 1.047) * 240, 620 + Math.sin(k * 1.047) * 240, 32, 'dullSteel');
  lettering(p, 700, 640, 60, 'IN  >', '#4a3914', 'opacity=".7"');
  bar(p, [760, 330], [720, -160], 150, 'bronze');
  tube(p, 'M736 160C730 40 640 -60 560 -160', 190, 'rubber', { over: p.texture('dirt', 0.7) });
  hoseClip(p, 736, 110, -100, 200, true);
  bar(p, [960, 330], [1010, 120], 140, 'bronze');
  tube(p, 'M1000 190C1040 20 1240 -40 1500 -160', 180, 'rubber');
  hoseClip(p, 1010, 96, -76, 190, false);
  const neck = 'M1080 760Q1140 740 1200 760L1190 1000Q1140 1020 1090 1000z';
  casting(p, neck, 'bronze', 0);
  solid(p, oval(1140, 960, 28, 20), '#080706');
  solid(
    p,
    'M980 940Q1150 900 1300 960L1360 1300Q1150 1420 960 1290z',
    p.texture('salt', 0.8),
    p.texture('verdigris', 0.8),
    0.6,
  );
  const starter = box(900, 1230, 1300, 400, 120);
  casting(p, starter, 'castIron', 90);
  solid(p, starter, p.texture('rust', 0.9), p.texture('salt', 0.9), 0.9);
  weep(p, 1140, 980, 330, 90, '#e4e8e6', 0.7);
  weep(p, 1180, 1000, 460, 50, '#7a3a14', 0.7);
  drop(p, 1140, 1020, 26);
  finger(p, 1180, 1080, -148, 1);
  glare(p, 580, 500, 70, 120, 0.5);
}

/** Round flame arrester on a carburettor. */
export function flameArrester(p: Picture): void {
  engineSpace(p);
  casting(p, 'M-200 1000L2200 920V1700H-200z', 'engineGrey', 80);
  casting(p, 'M560 1020H1440L1520 1260H480z', 'dullSteel', 0);
  bar(p, [300, 1080], [-160, 1160], 60, 'brass');
  const side = 'M460 560V900Q1000 1100 1540 900V560z';
  shadow(p, side, 30, 50, 34, 0.7);
  solid(p, side, round(p, 'dullSteel', 0));
  for (let k = 0; k < 74; k++) {
    const x = 464 + k * 14.6;
    const sag = Math.sin(((x - 460) / 1080) * Math.PI) * 98;
    p.add(
      `<path d="M${x} ${580 + sag * 0.8}V${900 + sag}" stroke="${k % 2 ? '#0b0b0c' : '#9da2a6'}" stroke-width="6" opacity=".75"/>`,
    );
  }
  solid(p, side, p.texture('dirt', 0.7), p.texture('dirt', 0.5), 0.9);
  const lid = oval(1000, 560, 560, 190);
  shadow(p, lid, 10, 34, 24, 0.6);
  solid(
    p,
    lid,
    p.linear(
      [
        [0, '#4b5157'],
        [0.3, '#c4cacf'],
        [0.45, '#f4f6f7'],
        [0.6, '#8a9197'],
        [1, '#3a4046'],
      ],
      24,
    ),
    p.texture('brushed', 1),
    0.5,
  );
  p.add(
    `<path d="${oval(1000, 556, 500, 164)}" fill="none" stroke="#33383d" stroke-width="9" opacity=".6"/>`,
  );
  solid(p, lid, p.texture('dirt', 1.1), p.texture('rust', 1.2), 0.5);
  bar(p, [1000, 550], [1000, 330], 56, 'steel');
  for (let k = 0; k < 9; k++)
    p.add(`<path d="M972 ${370 + k * 20}l56 9" stroke="#23272b" stroke-width="6"/>`);
  hexBolt(p, 1000, 430, 78, 'brass');
  solid(p, oval(1000, 550, 96, 30), '#060606');
  tube(p, 'M1540 720C1700 660 1840 700 2160 560', 96, 'rubber', { over: p.texture('dirt', 0.5) });
  hoseClip(p, 1640, 690, -14, 104, true);
  finger(p, 1110, 470, 160, 1);
}
