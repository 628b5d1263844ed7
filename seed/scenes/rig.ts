import { ball, round } from './materials.ts';
import { bar, box, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { darkSpace, gelcoat, yardBehind } from './surfaces.ts';
import { finger, pencil } from './surveyor.ts';
import { crack, drop, glare, scatter, weep } from './wear.ts';

/** Stranded wire running along a straight line. */
function strand(p: Picture, [x1, y1]: [number, number], [x2, y2]: [number, number], w: number): void {
  bar(p, [x1, y1], [x2, y2], w, 'steel');
  const length = Math.hypot(x2 - x1, y2 - y1);
  const angle = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
  const lay: string[] = [];
  for (let s = -w; s < length; s += w * 0.34) lay.push(`M${s} ${w / 2}L${s + w * 0.9} ${-w / 2}`);
  p.group(`transform="translate(${x1} ${y1}) rotate(${angle})"`, () => {
    p.clip(box(0, -w / 2, length, w), () => {
      p.add(
        `<path d="${lay.join('')}" stroke="#1c2024" stroke-width="${w * 0.07}" opacity=".75"/>`,
        `<path d="${lay.join('')}" stroke="#fff" stroke-width="${w * 0.05}" opacity=".4" transform="translate(${w * 0.1} 0)"/>`,
      );
    });
  });
}

/** Lower terminal of a shroud against the deck and sky. */
export function swage(p: Picture, state: 'cracked' | 'new'): void {
  p.light = 'day';
  p.behind(() => {
    yardBehind(p);
    solid(p, box(-100, 1050, 2200, 600), '#c9c6bb');
  });
  p.backBlur = 7;
  strand(p, [1030, -160], [1000, 420], 150);
  const barrel = 'M898 420Q1000 396 1104 424L1112 1010Q1000 1060 886 1006z';
  shadow(p, barrel, 30, 30, 26);
  solid(p, barrel, round(p, 'steel', 0), p.texture('brushed', 0.7, true), 0.4);
  solid(
    p,
    oval(1001, 418, 104, 24),
    p.radial(
      [
        [0, '#15181b'],
        [0.72, '#3b4045'],
        [0.8, '#dfe4e7'],
        [1, '#7a8187'],
      ],
      0.5,
      0.5,
      0.5,
    ),
  );
  strand(p, [1012, 250], [1001, 424], 148);
  bar(p, [1000, 1000], [996, 1240], 120, 'steel');
  for (let k = 0; k < 9; k++)
    p.add(`<path d="M938 ${1050 + k * 20}l120 12" stroke="#2b3035" stroke-width="7" opacity=".75"/>`);
  const turnbuckle = box(880, 1210, 236, 460, 70);
  shadow(p, turnbuckle, 24, 26, 22);
  solid(
    p,
    turnbuckle,
    round(p, state === 'new' ? 'steel' : 'brass', 0),
    p.texture('brushed', 0.8, true),
    0.4,
  );
  solid(p, box(946, 1290, 104, 400, 46), '#15171a');
  bar(p, [996, 1280], [996, 1560], 76, 'steel', { noShadow: true });
  if (state === 'cracked') {
    solid(p, barrel, p.texture('rust', 0.8), p.texture('dirt', 0.6), 0.3);
    crack(p, 972, 432, 89, 330, 8, '#1a0803');
    weep(p, 975, 440, 520, 70, '#7a3210', 0.85);
    weep(p, 985, 700, 330, 40, '#3a1606', 0.6);
    solid(p, 'M940 432q40 -18 70 0l-12 300q-30 10 -46 -2z', '#c23a5a', undefined);
    p.add(`<path d="M940 432q40 -18 70 0l-12 300q-30 10 -46 -2z" fill="#d6305f" opacity=".18"/>`);
    crack(p, 972, 432, 89, 330, 8, '#120503');
    pencil(p, 992, 560, -14);
  } else {
    glare(p, 960, 700, 18, 240, 0.8);
    finger(p, 1130, 760, -172, 1);
  }
}

/** Chainplate coming through the deckhead, rust running down the lining. */
export function chainplateWeep(p: Picture): void {
  p.light = 'flash';
  gelcoat(p, '#d9cfb8', '#a3977c');
  const ceiling = 'M-200 -200H2200V250L-200 330z';
  solid(
    p,
    ceiling,
    p.linear(
      [
        [0, '#f1eee4'],
        [1, '#bdb8aa'],
      ],
      90,
    ),
    p.texture('grit', 0.8),
    0.5,
  );
  p.add(`<path d="M-200 330L2200 250" stroke="#4b4434" stroke-width="12"/>`);
  for (let k = 0; k < 12; k++)
    p.add(`<path d="M${k * 190 - 80} 330l-20 1300" stroke="#6d6048" stroke-width="5" opacity=".5"/>`);
  const slot = box(800, 240, 330, 76, 20);
  solid(p, slot, '#14110c');
  const plate = 'M850 230H1080L1068 1180Q966 1240 864 1180z';
  shadow(p, plate, 34, 24, 26);
  solid(p, plate, round(p, 'dullSteel', 0), p.texture('brushed', 0.9, true), 0.7);
  solid(p, plate, p.texture('rust', 1.1), p.texture('rust', 0.7), 0.7);
  for (const y of [560, 800, 1040]) {
    solid(p, oval(966, y, 70), '#1a1512');
    solid(p, oval(966, y, 58), ball(p, 'steel'), p.texture('rust', 0.5), 0.8);
    weep(p, 966, y + 40, 200, 80, '#6d2d0d', 0.8);
  }
  weep(p, 900, 310, 1050, 180, '#7a3a14', 0.8);
  weep(p, 1060, 310, 800, 140, '#6b2e0d', 0.75);
  weep(p, 1170, 300, 620, 90, '#8c4d20', 0.6);
  weep(p, 780, 310, 560, 90, '#8c4d20', 0.6);
  solid(
    p,
    'M700 300q260 -70 560 -10l-30 120q-250 40 -500 0z',
    p.radial(
      [
        [0, '#5c2a0e', 0.75],
        [1, '#8a5226', 0],
      ],
      0.5,
      0.5,
      0.5,
    ),
  );
  drop(p, 1108, 520, 18);
  finger(p, 1100, 420, -160, 1);
}

/** Fork toggle over deck, split pin with one leg open. */
export function toggle(p: Picture): void {
  p.light = 'day';
  p.behind(() => {
    yardBehind(p);
    solid(p, box(-100, 900, 2200, 800), '#cfccc0');
  });
  p.backBlur = 6;
  bar(p, [1000, -160], [1000, 300], 180, 'steel');
  const fork = 'M820 260H1180V880Q1180 960 1110 960H1060V420H940V960H890Q820 960 820 880z';
  const plate = 'M900 1700L910 760Q1000 640 1090 760L1100 1700z';
  shadow(p, plate, 20, 10, 20);
  solid(p, plate, round(p, 'dullSteel', 0), p.texture('brushed', 0.8, true), 0.6);
  shadow(p, fork, 30, 30, 24);
  solid(p, fork, round(p, 'steel', 0), p.texture('brushed', 0.7, true), 0.4);
  bar(p, [700, 800], [1300, 800], 150, 'steel', { cap: true });
  solid(p, oval(700, 800, 40, 104), ball(p, 'steel'));
  solid(p, oval(1248, 800, 12, 40), '#111316');
  tube(p, 'M1236 700C1236 760 1240 860 1236 900', 34, 'brass', { cap: 'round' });
  solid(p, oval(1236, 680, 40, 46), ball(p, 'brass'));
  solid(p, oval(1236, 680, 18, 22), '#1a1508');
  tube(p, 'M1230 890C1220 940 1190 980 1150 990', 20, 'brass', { cap: 'round' });
  tube(p, 'M1244 890C1246 930 1248 970 1246 1010', 20, 'brass', { cap: 'round' });
  solid(p, plate, p.texture('rust', 1));
  weep(p, 1000, 900, 420, 80, '#8a4a1c', 0.6);
  glare(p, 900, 520, 24, 200, 0.8);
  finger(p, 1290, 960, -160, 0.95);
  scatter(p, 20, [860, 300, 280, 500], (x, y, s) => solid(p, oval(x, y, 2 + s * 6), '#7a3f1b'));
}

/** Wire rope on a sheave with broken wires. */
export function steeringCable(p: Picture): void {
  p.behind(() => {
    darkSpace(p);
    bar(p, [1500, -100], [1700, 1600], 200, 'greyHose', { noShadow: true });
  });
  p.backBlur = 4;
  const wheel = oval(1100, 960, 620);
  shadow(p, wheel, 40, 50, 40, 0.7);
  solid(p, wheel, ball(p, 'dullSteel'), p.texture('bump', 1), 0.6);
  solid(p, wheel, p.texture('rust', 1), p.texture('dirt', 1), 0.6);
  p.add(`<path d="${oval(1100, 960, 560)}" fill="none" stroke="#0c0a08" stroke-width="96" opacity=".8"/>`);
  solid(p, oval(1100, 960, 470), ball(p, 'dullSteel'), p.texture('brushed', 1), 0.6);
  for (let k = 0; k < 5; k++) {
    const a = k * 1.257 + 0.3;
    solid(p, oval(1100 + Math.cos(a) * 300, 960 + Math.sin(a) * 300, 96), '#0b0a09');
  }
  solid(p, oval(1100, 960, 120), ball(p, 'brass'));
  solid(p, oval(1100, 960, 60), ball(p, 'steel'));
  const run =
    'M-160 620C200 560 360 520 620 600C760 440 920 396 1110 398C1420 400 1640 620 1664 930C1680 1200 1640 1400 1600 1700';
  tube(p, run, 84, 'dullSteel', { over: p.texture('rust', 0.5), overOpacity: 0.7 });
  p.add(
    `<path d="${run}" fill="none" stroke="#111" stroke-width="72" stroke-dasharray="5 17" opacity=".55"/>`,
  );
  for (let k = 0; k < 38; k++) {
    const x = 860 + p.random.between(0, 360);
    const y = 430 - Math.sin(((x - 860) / 360) * Math.PI) * 38 + p.random.between(-24, 18);
    const up = p.random.between(60, 230);
    const lean = p.random.between(-130, 130);
    p.add(
      `<path d="M${x} ${y}q${lean * 0.2} ${-up * 0.6} ${lean} ${-up}" fill="none" stroke="#000" stroke-width="9" opacity=".4" transform="translate(10 14)"/>`,
      `<path d="M${x} ${y}q${lean * 0.2} ${-up * 0.6} ${lean} ${-up}" fill="none" stroke="${k % 3 === 0 ? '#a86a3a' : '#b9bfc4'}" stroke-width="7" stroke-linecap="round"/>`,
      `<path d="M${x} ${y}q${lean * 0.2} ${-up * 0.6} ${lean} ${-up}" fill="none" stroke="#fff" stroke-width="2" opacity=".8" transform="translate(-2 -1)"/>`,
    );
  }
  solid(p, oval(1040, 400, 240, 60), p.texture('rust', 0.5));
  finger(p, 860, 360, 32, 1);
}

/** Shackle between anchor ring and chain. */
export function anchorShackle(p: Picture): void {
  p.light = 'day';
  p.behind(() => gelcoat(p, '#cfccc0', '#8d8a7e'));
  p.backBlur = 2;
  const link = (x: number, y: number, turn: number, side: boolean): void => {
    p.group(`transform="translate(${x} ${y}) rotate(${turn})"`, () => {
      if (side) bar(p, [-150, 0], [150, 0], 78, 'zinc', { over: p.texture('rust', 0.6) });
      else {
        const ring = 'M-80 -110H80A110 110 0 0 1 80 110H-80A110 110 0 0 1 -80 -110z';
        tube(p, ring, 74, 'zinc', { over: p.texture('rust', 0.7), overOpacity: 0.8 });
      }
    });
  };
  for (let k = 4; k >= 0; k--) link(1400 + k * 190, 500 - k * 96, -27, k % 2 === 1);
  tube(p, 'M748 880C640 600 800 330 1010 320S1390 500 1290 735', 110, 'zinc', {
    over: p.texture('rust', 0.8),
    overOpacity: 0.7,
  });
  const shank = 'M-160 1120L560 800Q640 740 760 740Q860 800 820 920L640 1010L-160 1380z';
  shadow(p, shank, 30, 44, 30);
  solid(
    p,
    shank,
    p.linear(
      [
        [0, '#cdd1d2'],
        [0.3, '#9b9f9f'],
        [1, '#4d5152'],
      ],
      70,
    ),
    p.texture('bump', 1),
    0.6,
  );
  solid(p, shank, p.texture('rust', 1.1), p.texture('dirt', 1), 0.4);
  solid(p, oval(740, 838, 54), '#0d0c0b');
  bar(p, [640, 900], [1380, 700], 92, 'steel', { cap: true });
  solid(p, oval(1330, 712, 90, 110), ball(p, 'zinc'), p.texture('rust', 0.6), 0.8);
  solid(p, oval(1396, 694, 60, 70), ball(p, 'steel'));
  solid(p, oval(1402, 692, 20, 22), '#08090a');
  for (let k = 0; k < 8; k++)
    p.add(`<path d="M${668 + k * 15} ${842 - k * 4}l26 88" stroke="#23272b" stroke-width="5" opacity=".8"/>`);
  finger(p, 1450, 720, 172, 0.95);
  glare(p, 980, 400, 60, 30, 0.5);
}
