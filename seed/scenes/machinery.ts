import { ball, type MaterialName, round } from './materials.ts';
import { bar, box, hexBolt, hoseClip, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { darkSpace, timber } from './surfaces.ts';
import { finger, label, lettering } from './surveyor.ts';
import { crack, drop, glare, scatter, weep } from './wear.ts';

function engineSpace(p: Picture): void {
  p.behind(() => darkSpace(p));
  p.backBlur = 4;
}

/** Rough casting with bolts round its edge. */
function casting(p: Picture, d: string, material: MaterialName, angle = 60): void {
  shadow(p, d, 24, 32, 26, 0.7);
  solid(p, d, round(p, material, angle), p.texture('bump', 0.9), 0.7);
  solid(p, d, p.texture('dirt', 1), p.texture('bumpFine', 0.6), 0.3);
}

function pulley(p: Picture, x: number, y: number, r: number, material: MaterialName): void {
  shadow(p, oval(x, y, r), 16, 22, 18, 0.65);
  solid(p, oval(x, y, r), ball(p, material));
  p.add(
    `<circle cx="${x}" cy="${y}" r="${r * 0.9}" fill="none" stroke="#070707" stroke-width="${r * 0.12}" opacity=".75"/>`,
  );
  solid(p, oval(x, y, r * 0.78), ball(p, material), p.texture('dirt', 0.8), 0.6);
  for (let k = 0; k < 4; k++) {
    const a = k * 1.571 + 0.5;
    solid(p, oval(x + Math.cos(a) * r * 0.5, y + Math.sin(a) * r * 0.5, r * 0.13), '#0d0d0e');
  }
  hexBolt(p, x, y, r * 0.22, 'dullSteel');
}

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

/** Cast wet-exhaust elbow, rusted at the water inlet. */
export function exhaustElbow(p: Picture): void {
  engineSpace(p);
  casting(p, box(-200, 640, 620, 520, 30), 'castIron', 90);
  hexBolt(p, 350, 720, 44, 'rust');
  hexBolt(p, 350, 1080, 44, 'rust');
  casting(p, box(400, 600, 90, 600, 16), 'castIron', 0);
  const elbow =
    'M470 680C820 640 860 420 1100 340S1520 420 1560 760L1590 1080H1200L1180 860C1160 740 1080 740 980 860S700 1110 470 1110z';
  casting(p, elbow, 'castIron', 70);
  p.clip(elbow, () => {
    solid(
      p,
      box(400, 200, 1300, 1000),
      p.texture('rustPlate', 1),
      p.linear(
        [
          [0, '#ffdcae', 0.16],
          [0.4, '#000000', 0.05],
          [1, '#000000', 0.82],
        ],
        80,
      ),
    );
    solid(p, oval(1060, 520, 330, 260), p.texture('salt', 0.9), p.texture('rust', 0.6), 0.8);
  });
  solid(
    p,
    box(410, 600, 90, 600, 16),
    p.texture('dirt', 0.6),
    p.linear([
      [0, '#000000', 0.6],
      [1, '#000000', 0.1],
    ]),
  );
  solid(
    p,
    oval(520, 780, 170, 230),
    p.radial(
      [
        [0, '#040404', 0.9],
        [1, '#040404', 0],
      ],
      0.5,
      0.5,
      0.5,
    ),
  );
  bar(p, [1080, 420], [1000, 120], 150, 'rust', { over: p.texture('rustPlate', 0.6), overOpacity: 0.7 });
  tube(p, 'M1010 180C980 20 880 -40 760 -160', 180, 'rubber', { over: p.texture('dirt', 0.6) });
  hoseClip(p, 1000, 120, -106, 190, true);
  tube(p, 'M1390 1050C1400 1240 1480 1420 1640 1700', 430, 'rubber', {
    over: p.texture('bumpFine', 0.7),
    overOpacity: 0.4,
  });
  hoseClip(p, 1400, 1180, 80, 440, true);
  scatter(p, 12, [900, 480, 420, 260], (x, y, s) => {
    const w = 40 + s * 70;
    const flake = `M${x} ${y}l${w * 0.7} ${-w * 0.3}l${w * 0.5} ${w * 0.4}l${-w * 0.6} ${w * 0.4}z`;
    shadow(p, flake, 6, 12, 6, 0.8);
    solid(p, flake, p.texture('rustPlate', 0.5), '#000000', 0.25);
  });
  const bare = 'M1180 560l80 -60l100 40l10 90l-90 50l-90 -40z';
  solid(p, bare, '#3a1a0c', p.texture('bump', 0.5), 0.9);
  p.add(`<path d="${bare}" fill="none" stroke="#d89a62" stroke-width="5" opacity=".6"/>`);
  finger(p, 1350, 640, -160, 1);
}

/** Dry exhaust with its lagging gone, scorched batten beside. */
export function exhaustLagging(p: Picture): void {
  p.behind(() => timber(p, true));
  p.backBlur = 2;
  const batten = box(1360, -200, 220, 1900);
  shadow(p, batten, 30, 10, 30);
  solid(
    p,
    batten,
    p.texture('wood', 1, true),
    p.linear([
      [0, '#000000', 0.45],
      [1, '#000000', 0.1],
    ]),
  );
  solid(
    p,
    box(1360, 380, 220, 720),
    p.linear(
      [
        [0, '#0a0502', 0],
        [0.35, '#0a0502', 0.9],
        [0.65, '#0a0502', 0.9],
        [1, '#0a0502', 0],
      ],
      90,
    ),
    p.texture('bump', 0.6),
    0.5,
  );
  bar(p, [930, -200], [930, 1700], 300, 'rust');
  solid(
    p,
    box(780, -200, 300, 1900),
    p.texture('rustPlate', 0.9),
    p.linear([
      [0, '#000000', 0.8],
      [0.3, '#ffd3a0', 0.3],
      [0.6, '#000000', 0.1],
      [1, '#000000', 0.85],
    ]),
  );
  for (const [top, height, edge] of [
    [-220, 560, 340],
    [1100, 600, 1100],
  ] as const) {
    const d =
      top < 0
        ? `M600 ${top}H1260V${edge}L1190 ${edge + 60}L1100 ${edge - 20}L1010 ${edge + 70}L900 ${edge + 10}L780 ${edge + 80}L690 ${edge}L600 ${edge + 50}z`
        : `M600 ${edge + 40}L700 ${edge - 40}L800 ${edge + 30}L930 ${edge - 60}L1040 ${edge + 20}L1150 ${edge - 50}L1260 ${edge}V${top + height}H600z`;
    shadow(p, d, 30, 20, 30, 0.7);
    solid(p, d, round(p, 'lagging', 0), p.texture('bump', 0.7), 0.8);
    solid(p, d, p.texture('dirt', 0.9), p.texture('grit', 0.6), 0.7);
    const weave: string[] = [];
    for (let k = 0; k < 26; k++) weave.push(`M600 ${top + k * 46}L1260 ${top + k * 46 + 130}`);
    p.clip(d, () => p.add(`<path d="${weave.join('')}" stroke="#6b675b" stroke-width="8" opacity=".55"/>`));
  }
  scatter(p, 60, [620, 330, 620, 120], (x, y, s) =>
    p.add(
      `<path d="M${x} ${y}q${s * 40 - 20} ${30 + s * 40} ${s * 70 - 35} ${50 + s * 80}" stroke="#d9d5c7" stroke-width="3" fill="none" opacity=".7"/>`,
    ),
  );
  p.add(
    `<circle cx="930" cy="720" r="20" fill="#ff2b1c" ${p.soft(6)}/><circle cx="930" cy="720" r="8" fill="#ffd6c8"/>`,
  );
  label(p, 380, 1180, 500, 330, ['310 °C', 'E 0.90'], {
    tone: '#1d2a1c',
    ink: '#a8f08a',
    turn: -7,
    worn: false,
    size: 118,
  });
  finger(p, 560, 1250, -160, 0.8);
}

/** Steering ram with oil at the rod seal. */
export function steeringRam(p: Picture): void {
  engineSpace(p);
  const tray = 'M-200 1160L2200 1100V1700H-200z';
  solid(
    p,
    tray,
    p.texture('rustPlate', 1.6),
    p.linear(
      [
        [0, '#3d4a50', 0.8],
        [1, '#12171a', 0.85],
      ],
      90,
    ),
  );
  const oil = 'M380 1290C700 1200 1500 1180 1800 1260S1700 1440 1200 1450S260 1400 380 1290z';
  solid(
    p,
    oil,
    p.linear(
      [
        [0, '#1c1003', 0.9],
        [0.4, '#7a4a10', 0.7],
        [1, '#120a02', 0.92],
      ],
      70,
    ),
  );
  p.add(`<path d="${oil}" fill="none" stroke="#f2d9a2" stroke-width="6" opacity=".5"/>`);
  glare(p, 800, 1290, 240, 26, 0.6);
  bar(p, [-160, 820], [900, 780], 330, 'black', { over: p.texture('dirt', 0.9) });
  bar(p, [820, 784], [1000, 777], 380, 'dullSteel', {
    over: p.texture('brushed', 0.7, true),
    overOpacity: 0.5,
  });
  for (const y of [640, 780, 920]) hexBolt(p, 910, y, 40, 'dullSteel');
  bar(p, [1000, 777], [1760, 748], 130, 'steel', { over: p.texture('brushed', 0.7), overOpacity: 0.4 });
  solid(
    p,
    box(1000, 710, 420, 140),
    p.linear([
      [0, '#8a5a16', 0.75],
      [1, '#8a5a16', 0.1],
    ]),
  );
  solid(p, oval(1800, 746, 170), ball(p, 'castIron'), p.texture('rust', 0.8), 0.7);
  hexBolt(p, 1800, 746, 88, 'dullSteel');
  tube(p, 'M300 680C320 480 520 380 760 360S1300 200 2160 260', 70, 'rubber', {
    over: p.texture('bumpFine', 0.4),
  });
  bar(p, [300, 700], [300, 620], 84, 'brass');
  hexBolt(p, 300, 640, 54, 'brass');
  weep(p, 1010, 850, 380, 120, '#6b420c', 0.85);
  weep(p, 1130, 840, 300, 60, '#8a5a16', 0.7);
  drop(p, 1046, 1010, 24);
  drop(p, 1140, 930, 16);
  finger(p, 1080, 900, -150, 1);
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

/** Blower duct lying in the bilge below its blower. */
export function blowerDuct(p: Picture): void {
  engineSpace(p);
  casting(p, box(620, 60, 620, 360, 160), 'white', 90);
  bar(p, [930, 400], [930, 520], 260, 'white');
  solid(p, oval(930, 524, 132, 40), '#0a0a0a');
  tube(p, 'M1240 160C1400 120 1500 40 1560 -160', 40, 'yellow', { cap: 'round' });
  const water = 'M-200 1220C400 1160 1500 1160 2200 1230V1700H-200z';
  solid(
    p,
    water,
    p.linear(
      [
        [0, '#40423a'],
        [0.5, '#1e2422'],
        [1, '#0c0f0e'],
      ],
      90,
    ),
  );
  const run = 'M640 930C840 840 980 1010 1080 1110S1500 1260 1700 1130S1900 900 2160 930';
  tube(p, run, 280, 'greyHose', { over: p.texture('dirt', 0.9), overOpacity: 0.7 });
  p.add(
    `<path d="${run}" fill="none" stroke="#0d0d0d" stroke-width="276" stroke-dasharray="12 34" opacity=".6"/>`,
    `<path d="${run}" fill="none" stroke="#fff" stroke-width="230" stroke-dasharray="6 40" stroke-dashoffset="18" opacity=".18"/>`,
  );
  p.group('transform="rotate(-22 640 930)"', () => {
    solid(p, oval(640, 930, 56, 140), ball(p, 'greyHose'));
    solid(p, oval(634, 930, 44, 116), '#040404');
  });
  glare(p, 600, 1300, 360, 20, 0.35);
  scatter(p, 30, [100, 1220, 1800, 240], (x, y, s) =>
    solid(p, oval(x, y, 8 + s * 26, 3 + s * 6), s > 0.5 ? '#6b5b34' : '#262a28'),
  );
  p.add('<path d="M930 560V820" stroke="#f4f1e4" stroke-width="9" stroke-dasharray="30 22" opacity="0"/>');
  finger(p, 760, 860, 200, 0.9);
}
