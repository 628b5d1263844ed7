import { ball, round } from './materials.ts';
import { box, oval, shadow, solid } from './parts.ts';
import type { Picture } from './picture.ts';

const escapeText = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** Text as lettering on a thing. `size` in canvas units; anchored in the middle unless told. */
export function lettering(
  p: Picture,
  x: number,
  y: number,
  size: number,
  text: string,
  colour = '#1a1a1a',
  extra = '',
): void {
  p.add(
    `<text x="${x}" y="${y}" font-family="DejaVu Sans, Liberation Sans, Arial, sans-serif" font-size="${size}" fill="${colour}" text-anchor="middle" ${extra}>${escapeText(text)}</text>`,
  );
}

/** Text following a cubic curve, letter by letter (librsvg has no text on a path). */
export function letteringAlong(
  p: Picture,
  curve: [number, number, number, number, number, number, number, number],
  size: number,
  text: string,
  colour: string,
): void {
  const [x0, y0, x1, y1, x2, y2, x3, y3] = curve;
  [...text].forEach((letter, i) => {
    const t = i / Math.max(1, text.length - 1);
    const u = 1 - t;
    const x = u * u * u * x0 + 3 * u * u * t * x1 + 3 * u * t * t * x2 + t * t * t * x3;
    const y = u * u * u * y0 + 3 * u * u * t * y1 + 3 * u * t * t * y2 + t * t * t * y3;
    const dx = 3 * (u * u * (x1 - x0) + 2 * u * t * (x2 - x1) + t * t * (x3 - x2));
    const dy = 3 * (u * u * (y1 - y0) + 2 * u * t * (y2 - y1) + t * t * (y3 - y2));
    const turn = (Math.atan2(dy, dx) * 180) / Math.PI;
    lettering(
      p,
      0,
      size * 0.36,
      size,
      letter,
      colour,
      `font-weight="bold" opacity=".85" transform="translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn.toFixed(1)})"`,
    );
  });
}

/** A sticker or plate with lines of text; `tone` is its ground colour. */
export function label(
  p: Picture,
  x: number,
  y: number,
  w: number,
  h: number,
  lines: string[],
  options: { tone?: string; ink?: string; turn?: number; size?: number; worn?: boolean; head?: string } = {},
): void {
  const { tone = '#e6e2d4', ink = '#1c1b19', turn = 0, worn = true } = options;
  const longest = Math.max(...lines.map((line) => line.length));
  const size = Math.min(options.size ?? (h * 0.66) / lines.length, (w * 0.9) / (longest * 0.72));
  p.group(`transform="translate(${x} ${y}) rotate(${turn})"`, () => {
    const d = box(-w / 2, -h / 2, w, h, 8);
    shadow(p, d, 4, 6, 5, 0.45);
    solid(p, d, tone);
    if (options.head) p.add(`<path d="${box(-w / 2, -h / 2, w, h * 0.2, 8)}" fill="${options.head}"/>`);
    const first = -((lines.length - 1) * size * 1.22) / 2 + size * 0.36 + (options.head ? h * 0.08 : 0);
    lines.forEach((line, i) => {
      lettering(p, 0, first + i * size * 1.22, size, line, ink, i === 0 ? 'font-weight="bold"' : '');
    });
    solid(
      p,
      d,
      p.linear(
        [
          [0, '#ffffff', 0.3],
          [0.4, '#ffffff', 0],
          [1, '#000000', 0.28],
        ],
        55,
      ),
    );
    if (worn) solid(p, d, p.texture('dirt', 0.7), p.texture('grit', 0.6), 0.5);
  });
}

/** Steel rule laid from (x, y) along `angle`; a division of 1 cm is `cm` units. */
export function steelRule(p: Picture, x: number, y: number, angle: number, cms: number, cm = 62): void {
  const length = cms * cm + 60;
  const w = 92;
  p.group(`transform="translate(${x} ${y}) rotate(${angle})"`, () => {
    const d = box(0, 0, length, w, 6);
    shadow(p, d, 8, 12, 8);
    solid(
      p,
      d,
      p.linear(
        [
          [0, '#eef0f1'],
          [0.4, '#bfc4c7'],
          [0.55, '#f7f8f8'],
          [1, '#a3a9ad'],
        ],
        12,
      ),
      p.texture('brushed', 0.5),
      0.5,
    );
    const ticks: string[] = [];
    for (let mm = 0; mm <= cms * 10; mm++) {
      const h = mm % 10 === 0 ? 38 : mm % 5 === 0 ? 28 : 18;
      ticks.push(`M${20 + (mm * cm) / 10} 0v${h}`);
    }
    p.add(`<path d="${ticks.join('')}" stroke="#15171a" stroke-width="2.6"/>`);
    for (let c = 1; c <= cms; c++) lettering(p, 20 + c * cm, 72, 30, String(c), '#15171a');
  });
}

/** A gloved forefinger reaching in from outside the picture, its tip at (x, y), pointing along `angle`. */
export function finger(p: Picture, x: number, y: number, angle: number, scale = 1): void {
  p.group(`transform="translate(${x} ${y}) rotate(${angle}) scale(${scale})"`, () => {
    // Curled middle finger and knuckles behind, then the forefinger, then the back of the hand.
    const curled = 'M-330 70C-300 130 -330 200 -430 214C-560 226 -700 210 -820 190L-760 40z';
    const pointing =
      'M0 0C-4 -36 -34 -56 -84 -58C-150 -62 -220 -66 -262 -74C-330 -84 -420 -86 -520 -98L-860 -150L-860 150L-520 96C-420 82 -330 74 -262 68C-200 60 -140 58 -84 54C-36 50 -6 36 0 0z';
    const hand =
      'M-560 -104C-700 -130 -800 -190 -960 -210C-1300 -240 -1500 -200 -2600 -240V420C-1600 400 -1300 390 -1060 330C-900 300 -760 260 -640 214C-560 160 -540 60 -548 -20C-552 -60 -556 -80 -560 -104z';
    shadow(p, pointing, 24, 40, 26, 0.45);
    shadow(p, hand, 30, 50, 40, 0.4);
    solid(p, curled, ball(p, 'glove'));
    solid(p, curled, '#06182b', undefined);
    p.add(`<path d="${curled}" fill="${round(p, 'glove')}" opacity=".7"/>`);
    solid(p, hand, round(p, 'glove'), p.texture('bumpFine', 0.7), 0.2);
    solid(p, pointing, round(p, 'glove'), p.texture('bumpFine', 0.6), 0.2);
    p.add(
      '<path d="M-238 -66q22 60 2 128M-258 -68q20 60 2 132M-276 -66q16 58 2 130" fill="none" stroke="#0e2a45" stroke-width="5" opacity=".4"/>',
      '<path d="M-500 -86q26 80 -6 176M-532 -84q18 80 -6 176" fill="none" stroke="#0e2a45" stroke-width="7" opacity=".35"/>',
      '<path d="M-980 -190q60 160 -40 480M-1120 -200q40 200 -20 520" fill="none" stroke="#0e2a45" stroke-width="9" opacity=".22"/>',
      '<path d="M-12 -14C-28 -34 -70 -40 -128 -40" fill="none" stroke="#d9ecf9" stroke-width="9" stroke-linecap="round" opacity=".55"/>',
      '<path d="M-300 -52C-380 -62 -440 -64 -500 -72" fill="none" stroke="#d9ecf9" stroke-width="12" stroke-linecap="round" opacity=".3"/>',
    );
  });
}

/** A pencil whose point is at (x, y), coming in along `angle`. */
export function pencil(p: Picture, x: number, y: number, angle: number): void {
  p.group(`transform="translate(${x} ${y}) rotate(${angle})"`, () => {
    shadow(p, 'M0 0L-110 -26H-2600V26H-110z', 18, 30, 12);
    solid(
      p,
      'M0 0L-110 -26V26z',
      p.linear(
        [
          [0, '#e9c99a'],
          [1, '#a97f4c'],
        ],
        90,
      ),
    );
    solid(p, 'M0 0L-34 -8V8z', '#262626');
    solid(
      p,
      box(-2600, -26, 2492, 52),
      p.linear(
        [
          [0, '#8d2b16'],
          [0.3, '#e0653f'],
          [0.36, '#c24a27'],
          [0.68, '#c24a27'],
          [0.7, '#7d2613'],
          [1, '#4c140a'],
        ],
        90,
      ),
    );
  });
}

/** Hand-held meter with a small screen: moisture meter or thickness gauge. */
export function handMeter(
  p: Picture,
  x: number,
  y: number,
  angle: number,
  reading: string,
  unit: string,
  scale = 1,
): void {
  p.group(`transform="translate(${x} ${y}) rotate(${angle}) scale(${scale})"`, () => {
    const body = box(-150, -290, 300, 600, 54);
    shadow(p, body, 34, 46, 26, 0.6);
    solid(
      p,
      body,
      p.linear(
        [
          [0, '#15171a'],
          [0.15, '#4a4f55'],
          [0.3, '#33373c'],
          [0.8, '#23262a'],
          [1, '#0b0c0e'],
        ],
        12,
      ),
      p.texture('bumpFine', 0.4),
      0.3,
    );
    solid(
      p,
      box(-132, -268, 264, 560, 44),
      p.linear(
        [
          [0, '#d8772a'],
          [0.5, '#b85a18'],
          [1, '#7d390b'],
        ],
        70,
      ),
      p.texture('grit', 0.6),
      0.3,
    );
    solid(p, box(-104, -232, 208, 150, 12), '#14171a');
    solid(
      p,
      box(-92, -220, 184, 126, 6),
      p.linear(
        [
          [0, '#b9c4a8'],
          [1, '#97a588'],
        ],
        60,
      ),
    );
    lettering(p, -6, -132, 84, reading, '#161c14', 'font-weight="bold"');
    lettering(p, 58, -104, 22, unit, '#161c14');
    p.add('<path d="M-92 -220h184l-120 126h-64z" fill="#fff" opacity=".16"/>');
    for (const [bx, by, tone] of [
      [-58, 0, 'white'],
      [58, 0, 'white'],
      [0, 90, 'red'],
    ] as const) {
      shadow(p, oval(bx, by, 36), 3, 5, 4);
      solid(p, oval(bx, by, 36), ball(p, tone));
    }
    solid(p, box(-110, 180, 220, 26, 10), '#5b2a08');
    solid(p, box(-110, 222, 220, 26, 10), '#5b2a08');
  });
}
