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
  const size = options.size ?? (h * 0.66) / lines.length;
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

/** A gloved forefinger reaching in from a side, its tip at (x, y), pointing along `angle`. */
export function finger(p: Picture, x: number, y: number, angle: number, scale = 1): void {
  p.group(`transform="translate(${x} ${y}) rotate(${angle}) scale(${scale})"`, () => {
    const d =
      'M0 0C-6 -40 -40 -62 -92 -64C-240 -74 -420 -88 -760 -120L-900 260L-640 210C-500 150 -440 120 -400 96C-280 84 -180 72 -92 62C-40 58 -6 40 0 0z';
    shadow(p, d, 26, 40, 22, 0.5);
    solid(p, d, round(p, 'glove'), p.texture('bumpFine', 0.6), 0.25);
    p.add(
      '<path d="M-250 -66q26 60 4 142M-275 -68q24 60 4 148M-500 -88q30 90 -10 200" fill="none" stroke="#0e2a45" stroke-width="7" opacity=".5"/>',
    );
    p.add(
      `<path d="M-14 -22C-40 -44 -140 -54 -240 -52" fill="none" stroke="#cfe6f7" stroke-width="12" stroke-linecap="round" opacity=".5" ${p.soft(5)}/>`,
    );
  });
}

/** A pencil whose point is at (x, y), coming in along `angle`. */
export function pencil(p: Picture, x: number, y: number, angle: number): void {
  p.group(`transform="translate(${x} ${y}) rotate(${angle})"`, () => {
    shadow(p, 'M0 0L-110 -26H-1200V26H-110z', 18, 30, 12);
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
      box(-1200, -26, 1092, 52),
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
