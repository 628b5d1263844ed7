import { ball, round } from './materials.ts';
import { bar, box, hexBolt, hoseClip, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { bilgePaint, paintedSteel } from './surfaces.ts';
import { finger, pencil } from './surveyor.ts';
import { crack, drop, glare, scatter, weep } from './wear.ts';

function bilgeBehind(p: Picture): void {
  p.behind(() => {
    bilgePaint(p);
    bar(p, [-100, 300], [2100, 210], 150, 'whiteHose');
    bar(p, [1500, -100], [1720, 1600], 90, 'rubber');
  });
  p.backBlur = 4;
}

/** Hull skin at the bottom of the picture that a fitting stands on. */
function hullSkin(p: Picture): void {
  const d = 'M-200 1130Q900 1010 2200 1180V1700H-200z';
  solid(
    p,
    d,
    p.linear(
      [
        [0, '#a3a298'],
        [0.3, '#7f7d72'],
        [1, '#3b3831'],
      ],
      90,
    ),
    p.texture('bump', 1.6),
    0.6,
  );
  solid(p, d, p.texture('dirt', 1.1), p.texture('streaks', 1.2), 0.3);
}

/** Skin fitting, ball valve and tail standing on the hull; the hose goes off to the upper left. */
export function seacock(p: Picture, state: 'corroded' | 'scraped'): void {
  bilgeBehind(p);
  hullSkin(p);
  tube(p, 'M1010 520C990 330 820 180 560 120S120 60 -120 90', 190, 'greyHose', {
    over: p.texture('dirt', 0.8),
  });
  const flange = oval(1010, 1150, 310, 92);
  shadow(p, flange, 40, 44, 30, 0.7);
  solid(
    p,
    flange,
    p.linear(
      [
        [0, '#4e4128'],
        [0.35, '#a18850'],
        [1, '#2b2213'],
      ],
      70,
    ),
    p.texture('bump', 0.8),
    0.8,
  );
  solid(p, oval(1010, 1132, 300, 80), ball(p, 'oldBronze'), p.texture('verdigris', 0.9), 0.8);
  hexBolt(p, 790, 1130, 38, 'oldBronze');
  hexBolt(p, 1230, 1128, 38, 'oldBronze');
  bar(p, [1010, 1120], [1010, 880], 250, 'oldBronze', { over: p.texture('bump', 0.8), overOpacity: 0.7 });
  // Valve body: a barrel with side bosses.
  const body = 'M830 900Q812 760 850 690H1170Q1208 760 1190 900Q1010 950 830 900z';
  shadow(p, body, 26, 30, 24, 0.6);
  solid(p, body, round(p, 'oldBronze', 0), p.texture('bump', 0.9), 0.8);
  solid(p, oval(1190, 795, 46, 84), ball(p, 'oldBronze'));
  hexBolt(p, 1216, 795, 52, 'dullSteel');
  p.group('transform="rotate(-24 1216 795)"', () => {
    const lever = box(1190, 758, 470, 66, 30);
    shadow(p, lever, 16, 34, 16);
    solid(p, lever, round(p, 'dullSteel'), p.texture('rust', 0.6), 0.9);
    solid(p, box(1420, 744, 250, 94, 44), round(p, 'red'), p.texture('dirt', 0.4), 0.9);
  });
  bar(p, [1010, 700], [1010, 470], 214, 'oldBronze', { over: p.texture('bump', 0.6) });
  for (let k = 0; k < 4; k++) solid(p, oval(1010, 660 - k * 34, 118, 24), round(p, 'oldBronze', 0));
  tube(p, 'M1010 640C1010 520 1000 470 985 420', 226, 'greyHose', {
    over: p.texture('dirt', 0.6),
    shadow: false,
  });
  hoseClip(p, 1006, 560, -86, 240, true);
  const crust = 'M818 900Q800 760 846 690L890 640H1130L1180 690Q1216 780 1190 900Q1010 960 818 900z';
  solid(p, crust, p.texture('verdigris', 0.75), p.texture('salt', 0.8), 0.55);
  solid(p, box(880, 930, 260, 170), p.texture('verdigris', 0.8));
  weep(p, 920, 1080, 150, 90, '#3f8a74', 0.7);
  weep(p, 1160, 930, 220, 60, '#5b8f80', 0.6);
  if (state === 'scraped') {
    const bare = 'M900 958q90 30 210 14l16 66q-60 34 -132 26q-70 -6 -104 -44z';
    solid(
      p,
      bare,
      p.linear(
        [
          [0, '#7c3a28'],
          [0.3, '#e2957c'],
          [0.42, '#ffd9ca'],
          [0.55, '#cf7a60'],
          [1, '#793725'],
        ],
        8,
      ),
      p.texture('brushed', 0.5),
      0.7,
    );
    p.add(`<path d="${bare}" fill="none" stroke="#3b1d12" stroke-width="4" opacity=".6"/>`);
    pencil(p, 1110, 1015, 24);
  } else {
    finger(p, 1180, 1010, -155, 1);
  }
  glare(p, 900, 760, 90, 170, 0.4);
}

/** Hose on a tail: split with one clip, or renewed with two. */
export function drainHose(p: Picture, state: 'split' | 'single-clip' | 'renewed'): void {
  bilgeBehind(p);
  hullSkin(p);
  const renewed = state === 'renewed';
  const material = renewed ? 'rubber' : 'greyHose';
  const base = oval(700, 1240, 250, 74);
  shadow(p, base, 30, 34, 26, 0.7);
  solid(p, base, ball(p, 'oldBronze'), p.texture('verdigris', 0.8), renewed ? 0.25 : 0.7);
  bar(p, [700, 1230], [730, 980], 210, 'bronze', { over: p.texture('bump', 0.6) });
  tube(p, 'M722 1060C760 760 900 470 1230 330S1800 250 2150 180', 270, material, {
    over: renewed ? p.texture('bumpFine', 0.5) : p.texture('dirt', 0.6),
    overOpacity: 0.5,
  });
  if (renewed) {
    for (let k = 0; k < 16; k++) {
      const t = k / 16;
      const x = 760 + t * 480;
      const y = 880 - t * 540;
      p.add(
        `<path d="M${x - 110} ${y - 40}q100 30 190 110" stroke="#0a0a0b" stroke-width="7" fill="none" opacity=".32"/>`,
      );
    }
  }
  hoseClip(p, 742, 960, -78, 282, !renewed);
  if (renewed) hoseClip(p, 772, 852, -72, 282);
  else weep(p, 690, 1000, 240, 70, '#7a3d18', 0.8);
  if (state !== 'renewed') {
    const split = 'M836 700C850 640 900 560 962 494C950 570 900 660 850 712z';
    solid(p, split, '#070605');
    p.add(`<path d="${split}" fill="none" stroke="#e7e5df" stroke-width="7" opacity=".55"/>`);
    crack(p, 962, 494, -46, 90, 5);
    crack(p, 845, 706, 118, 70, 5);
    scatter(p, 22, [790, 520, 260, 260], (x, y, s) => crack(p, x, y, -50 + s * 20, 26 + s * 30, 2.4));
    drop(p, 872, 760, 17);
  }
  if (state === 'split') finger(p, 990, 520, -168, 1.05);
  if (state === 'single-clip') pencil(p, 800, 930, -10);
  glare(p, 1010, 440, 120, 70, 0.35);
}

/** Brass gate valve on a scaled steel stub. */
export function gateValve(p: Picture): void {
  p.behind(() => {
    paintedSteel(p, '#8a7f6d', '#372f27');
    bar(p, [300, -100], [240, 1600], 130, 'rust');
    bar(p, [1700, -100], [1760, 1600], 130, 'rust');
  });
  const floor = 'M-200 1160Q1000 1090 2200 1150V1700H-200z';
  solid(
    p,
    floor,
    p.texture('rustPlate', 1.4),
    p.linear(
      [
        [0, '#000000', 0.1],
        [1, '#000000', 0.75],
      ],
      90,
    ),
  );
  shadow(p, oval(960, 1180, 240, 66), 30, 30, 30, 0.8);
  bar(p, [960, 1190], [960, 880], 280, 'rust');
  solid(
    p,
    box(818, 880, 284, 310),
    p.texture('rustPlate', 0.8),
    p.linear([
      [0, '#000000', 0.75],
      [0.3, '#ffd9a8', 0.25],
      [0.6, '#000000', 0.15],
      [1, '#000000', 0.8],
    ]),
  );
  scatter(p, 26, [830, 1060, 250, 110], (x, y, s) =>
    p.add(`<path d="${oval(x, y, 10 + s * 16, 8 + s * 10)}" fill="#1c0d06" opacity=".7"/>`),
  );
  const hex = 'M790 880L830 760H1090L1130 880z';
  shadow(p, hex, 18, 22, 18);
  solid(p, hex, round(p, 'brass', 0), p.texture('bump', 0.7), 0.6);
  const body = 'M800 770C740 640 780 520 880 480H1040C1140 520 1180 640 1120 770z';
  shadow(p, body, 24, 26, 20);
  solid(p, body, round(p, 'brass', 0), p.texture('bump', 0.8), 0.7);
  solid(p, body, p.texture('verdigris', 0.8), p.texture('dirt', 0.6), 0.4);
  tube(p, 'M1090 640C1300 650 1420 700 1600 860S1900 1200 2150 1230', 210, 'rubber', {
    over: p.texture('dirt', 0.7),
  });
  hoseClip(p, 1240, 656, 8, 224, true);
  bar(p, [960, 490], [960, 300], 96, 'brass');
  hexBolt(p, 960, 420, 70, 'brass');
  p.group('transform="translate(960 270)"', () => {
    const rim =
      'M-270 0a270 84 0 1 0 540 0a270 84 0 1 0 -540 0zM-206 0a206 54 0 1 1 412 0a206 54 0 1 1 -412 0z';
    shadow(p, rim, 20, 60, 22);
    p.add(`<path d="M-240 0H240M-150 -58L150 58M150 -58L-150 58" stroke="#6d1410" stroke-width="40"/>`);
    p.add(`<path d="${rim}" fill="${round(p, 'red')}" fill-rule="evenodd"/>`);
    p.add(`<path d="${rim}" fill="${p.texture('rust', 0.5)}" fill-rule="evenodd"/>`);
    hexBolt(p, 0, -6, 44, 'dullSteel');
  });
  weep(p, 870, 890, 260, 120, '#2f1408', 0.8);
  weep(p, 1070, 890, 240, 60, '#4d8a78', 0.7);
  finger(p, 1120, 1120, -160, 0.95);
}
