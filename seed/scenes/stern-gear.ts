import { ball, round } from './materials.ts';
import { bar, box, hexBolt, oval, shadow, solid } from './parts.ts';
import type { Picture } from './picture.ts';
import { yardBehind } from './surfaces.ts';
import { finger, pencil } from './surveyor.ts';
import { crack, drop, glare, scatter, weep } from './wear.ts';

/** Hull bottom across the top of the picture, boatyard out of focus below. */
export function underBoat(p: Picture): void {
  p.light = 'day';
  p.behind(() => {
    yardBehind(p);
    bar(p, [240, 500], [160, 1600], 120, 'rust', { noShadow: true });
  });
  p.backBlur = 5;
  const hull = 'M-200 -200H2200V240Q1500 330 900 270T-200 380z';
  solid(
    p,
    hull,
    p.linear(
      [
        [0, '#30548a'],
        [0.5, '#234170'],
        [1, '#0d1c36'],
      ],
      90,
    ),
    p.texture('bump', 1.3),
    0.6,
  );
  solid(p, hull, p.texture('dirt', 1.4), p.texture('salt', 1.8), 0.3);
}

/** The bearing in the bracket seen end on, gap above the shaft. */
export function cutlessBearing(p: Picture): void {
  underBoat(p);
  const strut = 'M820 180L1240 170L1180 640H880z';
  shadow(p, strut, 16, 10, 20);
  solid(p, strut, round(p, 'oldBronze', 0), p.texture('verdigris', 1), 0.5);
  shadow(p, oval(1030, 860, 400), 40, 50, 40, 0.6);
  solid(p, oval(1030, 860, 396), ball(p, 'oldBronze'), p.texture('bump', 1), 0.6);
  solid(p, oval(1030, 860, 340), ball(p, 'bronze'), p.texture('brushed', 0.8), 0.6);
  solid(p, oval(1030, 860, 292), '#0e0e0f', p.texture('bump', 0.8), 0.5);
  for (let k = 0; k < 9; k++) {
    const a = (k / 9) * Math.PI * 2;
    const [x, y] = [1030 + Math.cos(a) * 262, 860 + Math.sin(a) * 262];
    solid(p, oval(x, y, 40), '#010101');
  }
  solid(p, oval(1030, 860, 246), '#020202');
  const shaft = oval(1030, 884, 220);
  solid(
    p,
    shaft,
    p.radial(
      [
        [0, '#f4f6f7'],
        [0.4, '#aab1b6'],
        [0.8, '#656c72'],
        [1, '#2c3136'],
      ],
      0.4,
      0.35,
      0.7,
    ),
    p.texture('brushed', 0.7),
    0.5,
  );
  for (let r = 40; r < 215; r += 26)
    p.add(
      `<circle cx="1030" cy="884" r="${r}" fill="none" stroke="#3b4147" stroke-width="2.4" opacity=".4"/>`,
    );
  solid(p, oval(1030, 884, 26), '#22262a');
  const lip = 'M800 700Q900 560 1030 560T1270 720L1230 740Q1150 620 1030 620T840 730z';
  solid(p, lip, '#1c1d1f', p.texture('bump', 0.5), 0.8);
  p.add(`<path d="M930 640Q1030 610 1140 646" stroke="#000" stroke-width="22" fill="none"/>`);
  solid(p, oval(1030, 860, 400), p.texture('dirt', 1.4), p.texture('salt', 1.2), 0.25);
  pencil(p, 1040, 640, -52);
  weep(p, 1030, 1150, 300, 120, '#2a2418', 0.5);
}

/** What is left of a shaft anode. */
export function anodeWasted(p: Picture): void {
  underBoat(p);
  bar(p, [-160, 900], [2160, 640], 240, 'steel', { over: p.texture('brushed', 0.9), overOpacity: 0.5 });
  p.group('transform="translate(1000 768) rotate(-6.4)"', () => {
    const rest =
      'M-210 -150C-240 -230 -120 -250 -60 -200S60 -270 130 -220S240 -180 220 -110L236 -20Q180 40 226 110C230 190 120 220 50 170S-110 230 -170 180S-250 80 -220 20S-190 -80 -210 -150z';
    shadow(p, rest, 26, 40, 24, 0.6);
    solid(
      p,
      rest,
      p.linear(
        [
          [0, '#9b9e9b'],
          [0.25, '#d4d6d2'],
          [0.5, '#8b8e8b'],
          [1, '#35383a'],
        ],
        90,
      ),
      p.texture('bump', 0.6),
      1,
    );
    solid(p, rest, p.texture('bump', 1.3), p.texture('salt', 0.7), 0.9);
    scatter(p, 60, [-190, -180, 400, 340], (x, y, s) =>
      p.add(
        `<ellipse cx="${x}" cy="${y}" rx="${6 + s * 20}" ry="${5 + s * 14}" fill="#26282a" opacity=".55"/>`,
      ),
    );
    solid(p, oval(-60, 20, 74, 60), ball(p, 'steel'), p.texture('brushed', 0.4), 0.5);
    hexBolt(p, 90, -30, 50, 'dullSteel');
    crack(p, -20, -190, 84, 370, 9);
  });
  finger(p, 1230, 830, -150, 1.05);
  drop(p, 960, 980, 18);
  weep(p, 1010, 930, 130, 60, '#d8d8d0', 0.5);
}

/** Rudder blade under the hull, feeler in the bearing gap. */
export function rudderGap(p: Picture): void {
  p.light = 'day';
  p.behind(() => yardBehind(p));
  p.backBlur = 5;
  const hull = 'M-200 -200H2200V430Q1300 520 -200 380z';
  solid(
    p,
    hull,
    p.linear(
      [
        [0, '#7b2c24'],
        [1, '#3a120f'],
      ],
      90,
    ),
    p.texture('bump', 1.3),
    0.6,
  );
  solid(p, hull, p.texture('dirt', 1.3), p.texture('bumpFine', 0.8), 0.4);
  bar(p, [1000, 300], [1000, 760], 210, 'steel', { over: p.texture('brushed', 0.7, true), overOpacity: 0.5 });
  solid(
    p,
    'M800 400Q1000 470 1200 440L1190 540Q1000 570 810 520z',
    round(p, 'black', 0),
    p.texture('bump', 0.6),
    0.6,
  );
  solid(p, 'M884 536Q1000 552 1116 544L1116 572Q1000 582 884 566z', '#000000');
  const bladeShape = 'M560 720Q1000 650 1500 740L1620 1700H520z';
  shadow(p, bladeShape, 30, 10, 40, 0.6);
  solid(
    p,
    bladeShape,
    p.linear(
      [
        [0, '#3b110d'],
        [0.25, '#8f3a30'],
        [0.45, '#74291f'],
        [1, '#36100c'],
      ],
      0,
    ),
    p.texture('bump', 1.4),
    0.6,
  );
  solid(p, bladeShape, p.texture('dirt', 1.2), p.texture('salt', 1.6), 0.3);
  solid(p, 'M560 720Q1000 650 1500 740L1496 776Q1000 690 562 756z', '#190706');
  p.group('transform="translate(1096 556) rotate(-9)"', () => {
    const feeler = box(0, -16, 560, 32, 12);
    shadow(p, feeler, 10, 20, 10);
    solid(
      p,
      feeler,
      p.linear(
        [
          [0, '#fafbfb'],
          [0.5, '#a3aab0'],
          [1, '#e6eaec'],
        ],
        8,
      ),
    );
  });
  finger(p, 1560, 470, 172, 1.2);
  weep(p, 960, 580, 130, 60, '#5a3a1c', 0.5);
  glare(p, 950, 640, 20, 90, 0.7);
}

/** Rubber bellows of a stern drive, folds spread, cracked. */
export function bellowsCracked(p: Picture): void {
  p.light = 'day';
  p.behind(() => {
    yardBehind(p);
    solid(p, box(-100, -100, 2200, 760), '#202326');
  });
  p.backBlur = 5;
  bar(p, [-160, 740], [420, 740], 760, 'dullSteel', { over: p.texture('salt', 1), overOpacity: 0.5 });
  bar(p, [1600, 740], [2160, 740], 720, 'black', { over: p.texture('bumpFine', 0.7), overOpacity: 0.4 });
  for (let k = 0; k < 6; k++) {
    const x = 380 + k * 218;
    const fold = `M${x} 400Q${x + 30} 330 ${x + 110} 316Q${x + 190} 330 ${x + 222} 400Q${x + 262} 740 ${x + 222} 1080Q${x + 190} 1150 ${x + 110} 1164Q${x + 30} 1150 ${x} 1080Q${x + 44} 740 ${x} 400z`;
    shadow(p, fold, 10, 14, 16, 0.6);
    solid(
      p,
      fold,
      p.linear([
        [0, '#050506'],
        [0.25, '#2a2c2e'],
        [0.45, '#6a6e71'],
        [0.55, '#3a3d3f'],
        [1, '#070708'],
      ]),
      p.texture('bump', 1),
      0.4,
    );
    solid(
      p,
      fold,
      p.linear(
        [
          [0, '#ffffff', 0.14],
          [0.35, '#ffffff', 0.1],
          [0.7, '#000000', 0.3],
          [1, '#000000', 0.7],
        ],
        90,
      ),
      p.texture('dirt', 0.8),
      0.4,
    );
  }
  for (let k = 0; k < 26; k++)
    crack(
      p,
      740 + p.random.between(0, 380),
      560 + p.random.between(0, 330),
      84,
      p.random.between(50, 170),
      4,
      '#000000',
    );
  const open = 'M905 600C960 660 960 800 912 890C880 800 876 680 905 600z';
  solid(p, open, '#010101');
  p.add(`<path d="${open}" fill="none" stroke="#8f9396" stroke-width="7" opacity=".7"/>`);
  for (let k = 0; k < 11; k++)
    p.add(
      `<path d="M${886 + (k % 2) * 3} ${640 + k * 21}l62 ${6 - k}" stroke="#c9bd9c" stroke-width="5" opacity=".75"/>`,
    );
  solid(p, 'M900 880q40 60 10 130t-30 120q-30 -60 -14 -130z', '#5b4a1e', p.texture('bump', 0.4), 0.6);
  bar(p, [380, 330], [380, 1150], 66, 'steel');
  bar(p, [1690, 320], [1690, 1160], 66, 'steel');
  hexBolt(p, 380, 420, 46, 'steel');
  finger(p, 1000, 690, 150, 1.05);
  finger(p, 830, 820, -28, 1.05);
}
