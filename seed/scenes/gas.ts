import { ball, round } from './materials.ts';
import { bar, box, hexBolt, hoseClip, oval, screw, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { gelcoat } from './surfaces.ts';
import { finger, label, lettering, letteringAlong } from './surveyor.ts';
import { crack, drop, glare, scatter } from './wear.ts';

/** Looking down into a moulded locker: drain at the bottom, side wall to the right. */
export function gasLocker(p: Picture, state: 'blocked' | 'clear'): void {
  p.light = 'day';
  gelcoat(p, '#e4e1d6', '#b7b4a9');
  const blocked = state === 'blocked';
  const well = box(210, 130, 1580, 1260, 130);
  solid(
    p,
    well,
    p.linear(
      [
        [0, '#4a4841'],
        [0.5, '#8d8a80'],
        [1, '#c4c1b5'],
      ],
      52,
    ),
  );
  const floor = box(430, 320, 1140, 890, 90);
  shadow(p, floor, 0, 0, 40, 0.45);
  solid(
    p,
    floor,
    p.linear(
      [
        [0, '#7d7a6f'],
        [1, '#b5b2a5'],
      ],
      55,
    ),
    p.texture('bump', 1.2),
    0.25,
  );
  solid(p, floor, p.texture('dirt', blocked ? 1 : 2), p.texture('grit', 0.7), 0.4);
  // Foot of the gas bottle at the upper left.
  shadow(p, oval(560, 250, 420, 330), 40, 60, 40, 0.7);
  solid(p, oval(560, 250, 420, 330), ball(p, 'blue'), p.texture('rust', 1), 0.5);
  p.add(
    `<path d="${oval(560, 250, 396, 306)}" fill="none" stroke="#0c2242" stroke-width="16" opacity=".6"/>`,
  );
  lettering(p, 560, 420, 70, '4.5 kg', '#dfe7ef', 'opacity=".8"');
  // Drain.
  shadow(p, oval(1080, 930, 128, 118), 6, 8, 12, 0.5);
  solid(p, oval(1080, 930, 124, 114), ball(p, 'steel'));
  solid(p, oval(1080, 930, 92, 84), '#0a0a09');
  screw(p, 1000, 862, 17);
  screw(p, 1162, 994, 17);
  if (blocked) {
    const puddle =
      'M700 820C820 700 1180 690 1360 800S1500 1120 1280 1160S760 1130 700 1020S640 880 700 820z';
    solid(
      p,
      puddle,
      p.linear(
        [
          [0, '#2a2c25', 0.62],
          [0.5, '#4d5347', 0.35],
          [1, '#20231d', 0.7],
        ],
        40,
      ),
    );
    p.add(`<path d="${puddle}" fill="none" stroke="#f4f6f2" stroke-width="6" opacity=".4"/>`);
    tube(
      p,
      'M960 1010C1010 900 1120 860 1180 930S1080 1020 1030 940S1150 820 1280 870S1420 1010 1330 1090',
      44,
      'lagging',
      {
        over: p.texture('bumpFine', 0.4),
      },
    );
    scatter(p, 20, [860, 780, 460, 300], (x, y, s) => {
      const a = s * 360;
      const tone = ['#5a3b1a', '#7c5a24', '#3f3218', '#8a4a1e'][Math.floor(s * 4)] ?? '#5a3b1a';
      const leaf = 'M-48 0Q-10 -34 52 -4Q0 30 -48 0z';
      p.group(`transform="translate(${x} ${y}) rotate(${a}) scale(${0.7 + s * 0.8})"`, () => {
        shadow(p, leaf, 4, 7, 4, 0.5);
        solid(p, leaf, tone, p.texture('bump', 0.3), 0.6);
        p.add('<path d="M-48 0Q0 -6 52 -4" stroke="#2a1a0a" stroke-width="3" fill="none"/>');
      });
    });
    glare(p, 1210, 800, 120, 34, 0.7);
    solid(p, oval(1690, 720, 46, 74), '#050505');
    p.add(`<path d="${oval(1690, 720, 46, 74)}" fill="none" stroke="#6d6a60" stroke-width="9"/>`);
    tube(p, 'M1690 716C1600 690 1500 560 1380 500S1040 470 960 380', 34, 'red', {
      over: p.texture('dirt', 0.4),
    });
    tube(p, 'M1690 736C1590 730 1480 610 1370 540S1060 500 980 420', 30, 'black');
    finger(p, 1650, 790, -118, 0.85);
  } else {
    drop(p, 1290, 1010, 14);
    drop(p, 900, 1080, 10);
    const patch = oval(1690, 720, 92, 128);
    solid(
      p,
      patch,
      p.radial([
        [0, '#efede4'],
        [0.7, '#dcd9cd'],
        [1, '#bdb9ac', 0.2],
      ]),
      p.texture('bump', 0.6),
      0.25,
    );
    finger(p, 1200, 1000, -150, 0.95);
  }
  glare(p, 1240, 420, 260, 60, 0.35);
}

/** Gas hose held up to the light, date on its cover. */
export function gasHoseDated(p: Picture, year: number): void {
  p.behind(() => {
    gelcoat(p, '#8b8a83', '#3a3934');
    solid(p, oval(300, 1100, 560, 640), ball(p, 'blue'));
    solid(p, oval(1740, 300, 220, 260), ball(p, 'brass'));
  });
  p.backBlur = 7;
  tube(p, 'M-160 900C300 1010 900 860 1240 640S1850 300 2160 330', 330, 'orangeHose', {
    over: p.texture('bumpFine', 0.6),
    overOpacity: 0.35,
  });
  tube(p, 'M-160 900C300 1010 900 860 1240 640S1850 300 2160 330', 330, 'orangeHose', {
    shadow: false,
    over: p.texture('dirt', 0.9),
    overOpacity: 0.8,
  });
  letteringAlong(
    p,
    [150, 960, 480, 960, 900, 850, 1240, 645],
    78,
    `LPG 8 mm MAX 20 bar ${year}-04`,
    '#190f08',
  );
  scatter(p, 46, [1240, 380, 520, 300], (x, y, s) =>
    crack(p, x, y - (x - 1240) * 0.32 + 120, 62 + s * 20, 30 + s * 70, 3),
  );
  p.group('transform="translate(1800 380) rotate(-14)"', () => {
    solid(p, box(0, -178, 330, 356, 20), round(p, 'brass'), p.texture('verdigris', 0.6), 0.5);
    for (let k = 0; k < 5; k++)
      p.add(`<path d="M${30 + k * 46} -178v356" stroke="#3c2b0b" stroke-width="9" opacity=".55"/>`);
  });
  hoseClip(p, 1700, 408, -14, 350, true);
  finger(p, 640, 1010, -70, 1.25);
  glare(p, 900, 760, 220, 26, 0.4);
}

/** Bottle top with regulator and hose. */
export function gasBottle(p: Picture, state: 'old' | 'new'): void {
  p.light = 'day';
  const old = state === 'old';
  p.behind(() => {
    gelcoat(p, '#b9b6aa', '#5d5b53');
    solid(p, box(1650, -100, 120, 1700), '#8f8c82');
  });
  const bottle = 'M320 1700V980C320 780 480 690 760 670H1000C1280 690 1440 780 1440 980V1700z';
  shadow(p, bottle, 60, 40, 50, 0.6);
  solid(p, bottle, round(p, 'blue', 0), p.texture('bumpFine', 0.8), 0.3);
  solid(p, bottle, p.texture('dirt', 1.4), p.texture('rust', 1.3), old ? 0.6 : 0.2);
  const collar = 'M560 760C580 640 660 600 880 600S1180 640 1200 760C1100 820 660 820 560 760z';
  solid(p, collar, round(p, 'blue', 0));
  solid(p, oval(880, 690, 250, 62), '#0a1626');
  bar(p, [880, 720], [880, 430], 120, 'brass', { over: p.texture('dirt', 0.5), overOpacity: 0.5 });
  hexBolt(p, 880, 560, 82, 'brass');
  const wheel = oval(880, 350, 130, 76);
  shadow(p, wheel, 12, 30, 14);
  solid(p, wheel, ball(p, 'black'));
  for (let k = 0; k < 12; k++)
    p.add(
      `<circle cx="${880 + Math.cos(k * 0.524) * 118}" cy="${350 + Math.sin(k * 0.524) * 68}" r="19" fill="#1b1c1e"/>`,
    );
  bar(p, [930, 520], [1130, 510], 84, 'brass');
  hexBolt(p, 1090, 512, 70, 'brass');
  const disc = oval(1290, 500, 190, 176);
  shadow(p, disc, 24, 34, 22);
  solid(p, disc, ball(p, old ? 'dullSteel' : 'steel'), p.texture('bumpFine', 0.5), 0.3);
  solid(p, oval(1290, 492, 128, 118), ball(p, old ? 'dullSteel' : 'steel'));
  p.add(
    `<path d="${oval(1290, 500, 168, 154)}" fill="none" stroke="#33373a" stroke-width="7" opacity=".7"/>`,
  );
  if (old) {
    p.clip(disc, () =>
      solid(
        p,
        'M1080 560q60 -70 130 -30t110 10t90 -50t120 60v240h-450z',
        p.texture('rustPlate', 0.5),
        p.linear(
          [
            [0, '#ffe0b8', 0.2],
            [1, '#000000', 0.7],
          ],
          80,
        ),
      ),
    );
  } else {
    label(p, 1290, 490, 190, 96, ['30 mbar', '1.5 kg/h'], { tone: '#dfe5ea', worn: false });
  }
  bar(p, [1290, 660], [1300, 790], 70, 'brass');
  tube(p, 'M1300 760C1310 960 1400 1080 1560 1110S1860 1060 2160 1180', 92, old ? 'orangeHose' : 'black', {
    over: old ? p.texture('dirt', 0.6) : p.texture('bumpFine', 0.4),
    overOpacity: 0.5,
  });
  hoseClip(p, 1302, 812, 86, 100, old);
  if (old) scatter(p, 18, [1320, 900, 180, 180], (x, y, s) => crack(p, x, y, 130 + s * 30, 24 + s * 26, 2.4));
  label(p, 720, 1180, 330, 200, ['PROPANE', 'keep upright'], { tone: '#ddd4bf', head: '#b22a1c' });
  if (old) finger(p, 1360, 980, -165, 0.9);
  else finger(p, 1470, 560, -165, 0.9);
  glare(p, 560, 1050, 60, 240, 0.35);
}
