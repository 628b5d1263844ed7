import { ball, round } from './materials.ts';
import { bar, box, hexBolt, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { timber } from './surfaces.ts';
import { finger, label } from './surveyor.ts';
import { glare, scatter } from './wear.ts';

type Point = [x: number, y: number];

function lead(p: Picture, d: string, colour: 'red' | 'black', width = 46): void {
  tube(p, d, width, colour, { over: p.texture('dirt', 0.5), overOpacity: 0.35, cap: 'round' });
}

/** A battery in perspective: its top face slanting away, posts on top. */
function battery(p: Picture, x: number, y: number, w: number, h: number): { plus: Point; minus: Point } {
  const depth = h * 0.42;
  const top = `M${x} ${y}l${w * 0.1} ${-depth}h${w * 0.8}l${w * 0.1} ${depth}z`;
  const front = box(x, y, w, h, 14);
  shadow(p, front, 30, 40, 34, 0.75);
  solid(
    p,
    front,
    p.linear(
      [
        [0, '#34373b'],
        [0.2, '#232528'],
        [1, '#0b0b0c'],
      ],
      80,
    ),
    p.texture('bumpFine', 0.5),
    0.3,
  );
  solid(
    p,
    top,
    p.linear(
      [
        [0, '#24262a'],
        [1, '#4c5055'],
      ],
      90,
    ),
    p.texture('dirt', 0.7),
    0.7,
  );
  for (let k = 1; k < 9; k++) {
    p.add(
      `<path d="M${x + (k * w) / 9} ${y + h * 0.66}v${h * 0.3}" stroke="#000" stroke-width="9" opacity=".5"/>`,
    );
  }
  label(p, x + w / 2, y + h * 0.34, w * 0.66, h * 0.36, ['12 V  110 Ah', 'deep cycle'], {
    tone: '#c9ccc6',
    head: '#2a5c3a',
  });
  for (let k = 0; k < 6; k++) {
    const cx = x + w * (0.24 + k * 0.104);
    solid(p, oval(cx, y - depth * 0.5, w * 0.034, depth * 0.14), ball(p, 'black'));
  }
  const post = (fx: number): Point => {
    const at: Point = [x + w * fx, y - depth * 0.36];
    solid(p, oval(at[0], at[1], 46, 24), '#101112');
    bar(p, [at[0], at[1]], [at[0], at[1] - 62], 58, 'zinc', { noShadow: true });
    solid(p, oval(at[0], at[1] - 62, 29, 13), ball(p, 'zinc'));
    return [at[0], at[1] - 40];
  };
  return { plus: post(0.13), minus: post(0.87) };
}

function terminal(p: Picture, [x, y]: Point, dirty: boolean): void {
  const d = oval(x, y + 8, 62, 34);
  shadow(p, d, 6, 12, 8);
  solid(p, d, round(p, 'dullSteel'), p.texture('bump', 0.3), 0.6);
  hexBolt(p, x + 50, y + 14, 22, 'dullSteel');
  solid(p, oval(x, y - 20, 26, 12), ball(p, 'zinc'));
  if (dirty) solid(p, oval(x, y + 4, 92, 66), p.texture('salt', 0.4), p.texture('verdigris', 0.35), 0.8);
}

/** Batteries in a locker: loose, strapped and covered, or a single one beside a tank. */
export function batteries(p: Picture, state: 'loose' | 'strapped' | 'single'): void {
  p.behind(() => timber(p));
  p.backBlur = 2;
  const shelf = 'M-200 1230L2200 1210V1700H-200z';
  solid(
    p,
    shelf,
    p.texture('wood', 1.3),
    p.linear(
      [
        [0, '#000000', 0.25],
        [1, '#000000', 0.7],
      ],
      90,
    ),
  );
  solid(p, shelf, p.texture('dirt', 0.9));
  if (state === 'single') {
    const tank = box(1180, 260, 1000, 1010, 40);
    shadow(p, tank, -30, 30, 40);
    solid(
      p,
      tank,
      p.linear(
        [
          [0, '#74797d'],
          [0.3, '#c8cdd0'],
          [0.5, '#8f9599'],
          [1, '#565b5f'],
        ],
        14,
      ),
      p.texture('brushed', 1.2),
      0.6,
    );
    label(p, 1560, 640, 420, 230, ['PETROL', '180 l', 'test 0.25 bar'], { tone: '#d5d7d2', head: '#a82317' });
    const { plus, minus } = battery(p, 330, 760, 720, 500);
    lead(p, `M${plus[0]} ${plus[1]}C${plus[0] - 60} 420 200 330 -120 380`, 'red');
    lead(p, `M${minus[0]} ${minus[1]}C${minus[0] + 60} 400 900 260 640 -100`, 'black');
    terminal(p, plus, true);
    terminal(p, minus, true);
    tube(p, 'M250 1250C300 820 420 640 690 640S1060 800 1120 1250', 34, 'blue', {
      over: p.texture('bumpFine', 0.2),
    });
    tube(p, 'M250 1260C230 1300 260 1330 300 1300', 20, 'steel');
    finger(p, plus[0] - 10, plus[1] + 20, -62, 0.85);
    glare(p, 1420, 420, 90, 260, 0.5);
    return;
  }
  const a = battery(p, 190, 800, 700, 470);
  p.group(state === 'loose' ? 'transform="rotate(4 1400 1000)"' : '', () => {
    battery(p, 1010, 800, 700, 470);
  });
  const b: Point = [1101, 700];
  lead(p, `M${a.plus[0]} ${a.plus[1]}C${a.plus[0] - 40} 460 360 360 520 330S700 160 640 -120`, 'red');
  lead(p, `M${a.minus[0]} ${a.minus[1]}C${a.minus[0] + 40} 520 1000 500 ${b[0]} ${b[1]}`, 'black');
  lead(p, `M${a.plus[0] + 20} ${a.plus[1]}C360 560 800 430 1120 660`, 'red', 40);
  lead(p, `M1620 690C1640 480 1800 380 2120 330`, 'black');
  if (state === 'loose') {
    terminal(p, a.plus, true);
    terminal(p, a.minus, true);
    terminal(p, b, false);
    terminal(p, [1620, 700], true);
    // Melted insulation with bare strands.
    solid(p, 'M268 610q24 -40 62 -46l18 54q-44 20 -80 -8z', '#1a0805');
    scatter(p, 16, [276, 566, 60, 44], (x, y, s) =>
      p.add(`<path d="M${x} ${y}l${16 + s * 14} ${-10 - s * 18}" stroke="#d98d4f" stroke-width="3.4"/>`),
    );
    solid(
      p,
      oval(330, 540, 70, 40),
      p.radial(
        [
          [0, '#050201', 0.9],
          [1, '#050201', 0],
        ],
        0.5,
        0.5,
        0.5,
      ),
    );
    finger(p, 320, 650, 20, 0.95);
  } else {
    for (const x of [281, 799, 1101, 1619]) {
      const cover = box(x - 80, 610, 160, 110, 34);
      shadow(p, cover, 8, 14, 10);
      solid(p, cover, ball(p, x === 281 || x === 1101 ? 'red' : 'black'));
    }
    for (const x of [470, 1300]) {
      const strap = `M${x} 1270L${x + 10} 800L${x + 40} 596H${x + 130}L${x + 110} 800L${x + 100} 1270z`;
      shadow(p, strap, 8, 10, 8);
      solid(p, strap, '#26282b', p.texture('brushed', 0.4, true), 0.6);
    }
    const buckle = box(440, 960, 190, 120, 14);
    shadow(p, buckle, 6, 12, 8);
    solid(p, buckle, ball(p, 'black'));
    glare(p, 1240, 660, 90, 30, 0.5);
  }
}
