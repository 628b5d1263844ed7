import { ball, round } from './materials.ts';
import { bar, box, hexBolt, oval, screw, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { darkSpace, gelcoat, timber } from './surfaces.ts';
import { finger, label, lettering, pencil } from './surveyor.ts';
import { glare } from './wear.ts';

/** Shore-power inlet in a white coaming, flap open. */
export function shoreInlet(p: Picture, state: 'scorched' | 'new'): void {
  p.light = 'day';
  gelcoat(p);
  const burnt = state === 'scorched';
  const flap = box(610, -60, 780, 420, 160);
  shadow(p, flap, 10, 30, 24);
  solid(
    p,
    flap,
    p.linear(
      [
        [0, '#50555a'],
        [0.5, '#a9afb4'],
        [1, '#6d7277'],
      ],
      90,
    ),
    p.texture('bumpFine', 0.6),
    0.2,
  );
  bar(p, [640, 380], [1360, 380], 54, 'steel');
  const plate = box(480, 390, 1040, 1000, 120);
  shadow(p, plate, 20, 30, 24);
  solid(
    p,
    plate,
    p.linear(
      [
        [0, '#3f6fa8'],
        [0.5, '#2a558b'],
        [1, '#173a66'],
      ],
      60,
    ),
    p.texture('bumpFine', 0.6),
    0.25,
  );
  for (const [x, y] of [
    [570, 480],
    [1430, 480],
    [570, 1300],
    [1430, 1300],
  ] as const)
    screw(p, x, y, 36);
  shadow(p, oval(1000, 890, 400), 10, 16, 14);
  solid(p, oval(1000, 890, 396), ball(p, 'blue'));
  solid(
    p,
    oval(1000, 890, 340),
    p.radial(
      [
        [0, '#26486f'],
        [0.7, '#15304f'],
        [1, '#071322'],
      ],
      0.55,
      0.6,
    ),
  );
  solid(p, oval(1000, 890, 250), burnt ? '#5d5a4f' : '#7f8b99', p.texture('bumpFine', 0.5), 0.3);
  const pins: [number, number, string][] = [
    [1000, 730, 'PE'],
    [865, 980, 'N'],
    [1135, 980, 'L'],
  ];
  for (const [x, y, name] of pins) {
    solid(p, oval(x, y, 64), '#0d141d');
    solid(p, oval(x, y, 44), ball(p, burnt && name === 'L' ? 'rust' : 'brass'));
    lettering(p, x + (name === 'L' ? 90 : -92), y + 16, 42, name, '#dfe6ee', 'opacity=".7"');
  }
  if (burnt) {
    const melt =
      'M1070 900C1160 850 1270 900 1266 1000S1200 1150 1110 1130S1010 1040 1030 980S1040 920 1070 900z';
    solid(
      p,
      melt,
      p.radial([
        [0, '#050302', 0.95],
        [0.55, '#1f0f06', 0.9],
        [1, '#4d2a10', 0.55],
      ]),
      p.texture('bump', 0.7),
      0.8,
    );
    solid(p, oval(1135, 985, 40), ball(p, 'rust'), p.texture('bump', 0.3), 0.9);
    solid(p, 'M1090 1110q30 100 70 90t40 -110z', '#120a06', p.texture('bump', 0.5), 0.6);
    solid(
      p,
      oval(1150, 1000, 330, 300),
      p.radial(
        [
          [0, '#1a0d04', 0.75],
          [0.6, '#2a1507', 0.35],
          [1, '#2a1507', 0],
        ],
        0.5,
        0.5,
        0.5,
      ),
    );
    solid(p, plate, p.texture('dirt', 1));
    pencil(p, 1200, 1060, -140);
  } else {
    label(p, 1000, 1330, 360, 72, ['230 V ~  16 A'], { tone: '#dfe3e6', worn: false });
    glare(p, 800, 640, 150, 50, 0.6);
  }
}

const wireColours = [
  'red',
  'black',
  'yellowTube',
  'blue',
  'whiteHose',
  'orangeHose',
  'green',
  'greyHose',
] as const;

/** The back of a panel with too many wires. */
export function wiringJumble(p: Picture): void {
  p.behind(() => {
    darkSpace(p, false);
    timber(p, true);
  });
  const panel = box(120, 60, 1700, 330, 12);
  shadow(p, panel, 20, 40, 30);
  solid(
    p,
    panel,
    p.linear(
      [
        [0, '#55595c'],
        [1, '#25282a'],
      ],
      80,
    ),
    p.texture('brushed', 1.1),
    0.4,
  );
  for (let k = 0; k < 13; k++) {
    const x = 200 + k * 124;
    const breaker = box(x, 130, 92, 170, 8);
    shadow(p, breaker, 6, 10, 8);
    solid(p, breaker, ball(p, 'black'));
    screw(p, x + 46, 166, 22);
    screw(p, x + 46, 262, 22);
  }
  const bus = box(240, 1180, 1300, 90, 6);
  shadow(p, bus, 14, 22, 16);
  solid(p, bus, round(p, 'brass'), p.texture('verdigris', 0.5), 0.6);
  for (let k = 0; k < 62; k++) {
    const x1 = 200 + p.random.between(0, 1560);
    const x2 = 260 + p.random.between(-200, 1500);
    const y2 = p.random.next() > 0.4 ? 1210 : 1700;
    const sag = p.random.between(380, 1240);
    const d = `M${x1} 280C${x1 + p.random.between(-180, 180)} ${sag} ${x2 + p.random.between(-420, 420)} ${p.random.between(400, 900)} ${x2} ${y2}`;
    const colour = wireColours[Math.floor(p.random.next() * wireColours.length)] ?? 'red';
    tube(p, d, p.random.between(14, 32), colour, { cap: 'round' });
    if (k % 9 === 4) {
      const y = p.random.between(560, 900);
      p.group(`transform="translate(${(x1 + x2) / 2} ${y}) rotate(${p.random.between(-50, 50)})"`, () => {
        const block = box(-70, -38, 140, 76, 10);
        shadow(p, block, 6, 12, 8);
        solid(p, block, ball(p, k % 2 ? 'white' : 'black'), p.texture('dirt', 0.4), 0.8);
        screw(p, -34, 0, 17);
        screw(p, 34, 0, 17);
      });
    }
    if (k % 11 === 3) {
      const tape = `M${x2 - 60} ${p.random.between(700, 1000)}q60 -30 130 0l-10 74q-60 -26 -116 0z`;
      solid(p, tape, '#0e0e0f', p.texture('bump', 0.4), 0.7);
    }
  }
  for (let k = 0; k < 9; k++) hexBolt(p, 320 + k * 140, 1224, 28, 'brass');
  solid(p, box(-100, -100, 2200, 1700), p.texture('dirt', 1.8), p.texture('dirt', 1), 0.25);
  finger(p, 1180, 940, -150, 0.95);
}

/** Two solid cores in a screw block, tape pulled back. */
export function wiringJoint(p: Picture): void {
  p.behind(() => {
    darkSpace(p, false);
    for (let k = 0; k < 12; k++) {
      const c = wireColours[k % 8] ?? 'red';
      tube(p, `M${k * 180 - 100} -100C${k * 160} 500 ${k * 200} 900 ${k * 170} 1700`, 60, c, {
        shadow: false,
      });
    }
  });
  p.backBlur = 7;
  tube(p, 'M-160 560C200 480 420 640 720 690', 120, 'greyHose', { over: p.texture('dirt', 0.7) });
  tube(p, 'M-160 900C240 960 460 880 720 810', 96, 'blue', { over: p.texture('dirt', 0.6) });
  tube(p, 'M1280 690C1560 640 1800 520 2160 540', 96, 'red', { over: p.texture('dirt', 0.6) });
  tube(p, 'M1280 810C1560 860 1780 1000 2160 1010', 96, 'black');
  for (const [x1, x2, y] of [
    [700, 830, 690],
    [700, 830, 808],
    [1170, 1300, 690],
    [1170, 1300, 808],
  ] as const) {
    bar(p, [x1, y], [x2, y], 34, 'brass');
    solid(p, box(x1, y - 18, 60, 36), p.texture('verdigris', 0.4));
  }
  const block = box(790, 600, 420, 310, 34);
  shadow(p, block, 24, 36, 24);
  solid(
    p,
    block,
    p.linear(
      [
        [0, '#f1efe4'],
        [0.4, '#d3cfbe'],
        [1, '#8d8874'],
      ],
      70,
    ),
    p.texture('bumpFine', 0.6),
    0.25,
  );
  solid(p, block, p.texture('dirt', 0.8));
  for (const y of [690, 808]) {
    for (const x of [890, 1110]) {
      solid(p, oval(x, y, 54, 50), '#514d3f');
      screw(p, x, y, 38, false);
    }
  }
  solid(
    p,
    oval(1120, 700, 160, 110),
    p.radial(
      [
        [0, '#1a0b02', 0.85],
        [0.6, '#3b1c08', 0.4],
        [1, '#3b1c08', 0],
      ],
      0.5,
      0.5,
      0.5,
    ),
  );
  const tape =
    'M760 930C900 980 1100 990 1260 940L1330 1090C1420 1180 1500 1210 1560 1190C1460 1300 1220 1260 1120 1140C1000 1090 860 1060 770 1040z';
  shadow(p, tape, 16, 24, 16);
  solid(
    p,
    tape,
    p.linear(
      [
        [0, '#0d0d0e'],
        [0.4, '#46494c'],
        [0.55, '#151617'],
        [1, '#060606'],
      ],
      40,
    ),
    p.texture('bump', 0.6),
    0.5,
  );
  finger(p, 860, 640, 40, 1);
}
