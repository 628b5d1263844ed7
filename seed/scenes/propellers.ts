import { ball, round } from './materials.ts';
import { bar, hexBolt, oval, shadow, solid } from './parts.ts';
import type { Picture } from './picture.ts';
import { underBoat } from './stern-gear.ts';
import { yardBehind } from './surfaces.ts';
import { finger, steelRule } from './surveyor.ts';
import { crack, scatter } from './wear.ts';

/** One blade as path data, root at the origin, pointing along +x. */
const blade = (l: number, w: number): string =>
  `M0 ${-w * 0.3}C${l * 0.25} ${-w * 0.9} ${l * 0.8} ${-w} ${l} ${-w * 0.1}C${l * 1.02} ${w * 0.5} ${l * 0.6} ${w * 0.9} ${l * 0.3} ${w * 0.6}C${l * 0.15} ${w * 0.5} 0 ${w * 0.5} 0 ${w * 0.3}z`;

function screwPropeller(p: Picture, x: number, y: number, l: number, aluminium: boolean): void {
  const stops = aluminium
    ? ([
        [0, '#8d9499'],
        [0.35, '#3c4146'],
        [0.7, '#23272a'],
        [1, '#5a6066'],
      ] as [number, string][])
    : ([
        [0, '#5b4520'],
        [0.3, '#d0a95e'],
        [0.45, '#f1dca4'],
        [0.6, '#9a7638'],
        [1, '#3e2d13'],
      ] as [number, string][]);
  for (const [turn, squash] of [
    [-92, 1],
    [28, 0.86],
    [150, 0.92],
  ] as const) {
    p.group(`transform="translate(${x} ${y}) rotate(${turn}) scale(1 ${squash})"`, () => {
      const d = blade(l, l * 0.5);
      shadow(p, d, 16, 24, 22, 0.55);
      solid(p, d, p.linear(stops, 60), p.texture('bump', 0.9), 0.4);
      solid(p, d, p.texture('dirt', 1), p.texture(aluminium ? 'grit' : 'verdigris', 1), 0.35);
      p.add(`<path d="${d}" fill="none" stroke="#fff" stroke-width="5" opacity=".3"/>`);
    });
  }
  shadow(p, oval(x, y, l * 0.3), 14, 20, 16, 0.6);
  solid(p, oval(x, y, l * 0.3), ball(p, aluminium ? 'dullSteel' : 'bronze'), p.texture('bumpFine', 0.6), 0.3);
}

/** Sterngear from the quarter. */
export function propeller(p: Picture): void {
  underBoat(p);
  bar(p, [2160, 470], [1180, 770], 96, 'steel', { over: p.texture('dirt', 0.7), overOpacity: 0.5 });
  const strut = 'M1420 230L1700 220L1560 640L1380 700z';
  shadow(p, strut, 14, 16, 18);
  solid(p, strut, round(p, 'oldBronze', 10), p.texture('verdigris', 0.9), 0.5);
  bar(p, [1640, 606], [1280, 716], 190, 'oldBronze', { cap: true, over: p.texture('bump', 0.8) });
  screwPropeller(p, 960, 840, 470, false);
  bar(p, [960, 840], [740, 900], 150, 'bronze', { cap: true });
  hexBolt(p, 742, 900, 64, 'bronze');
  scatter(p, 40, [820, 320, 300, 180], (x, y, s) => solid(p, oval(x, y, 3 + s * 7), '#2e210f'));
  finger(p, 1010, 380, 150, 0.9);
}

/** Stern-drive propeller with a bent tip. */
export function drivePropeller(p: Picture): void {
  p.light = 'day';
  p.behind(() => yardBehind(p));
  p.backBlur = 5;
  const leg =
    'M1080 -200L1700 -200L1640 420L1980 520L2000 640L1500 640L1560 1100Q1540 1400 1380 1700H1230L1180 1040H1020L980 860L1060 620z';
  shadow(p, leg, 30, 20, 30);
  solid(
    p,
    leg,
    p.linear(
      [
        [0, '#16181a'],
        [0.3, '#4c5156'],
        [0.5, '#2b2f33'],
        [1, '#0c0d0e'],
      ],
      10,
    ),
    p.texture('bumpFine', 0.8),
    0.35,
  );
  solid(p, leg, p.texture('dirt', 1.4), p.texture('salt', 1.3), 0.4);
  solid(
    p,
    'M980 480H2060V550H960z',
    p.linear(
      [
        [0, '#5c6267'],
        [1, '#141618'],
      ],
      90,
    ),
  );
  bar(p, [1240, 850], [800, 850], 330, 'black', { over: p.texture('bumpFine', 0.5), overOpacity: 0.4 });
  screwPropeller(p, 820, 850, 460, true);
  p.group('transform="translate(800 420) rotate(-40)"', () => {
    const bent = 'M-70 20C-80 -40 60 -80 130 -30C120 30 40 70 -70 20z';
    shadow(p, bent, 8, 14, 10);
    solid(
      p,
      bent,
      p.linear(
        [
          [0, '#c3c8cc'],
          [0.5, '#777d82'],
          [1, '#24272a'],
        ],
        80,
      ),
      p.texture('brushed', 0.4),
      0.8,
    );
    crack(p, -50, 30, 4, 160, 5);
  });
  hexBolt(p, 812, 850, 64, 'steel');
  steelRule(p, 130, 380, -18, 9);
}
