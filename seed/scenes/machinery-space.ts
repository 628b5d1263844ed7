import { casting, engineSpace } from './engine-parts.ts';
import { ball, round } from './materials.ts';
import { bar, box, hexBolt, hoseClip, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { timber } from './surfaces.ts';
import { finger, label } from './surveyor.ts';
import { drop, glare, scatter, weep } from './wear.ts';

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
  finger(p, 700, 1010, -38, 0.85);
}
