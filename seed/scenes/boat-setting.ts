import { bar, box, solid } from './parts.ts';
import type { Picture } from './picture.ts';
import { scatter } from './wear.ts';

const horizon = 860;

function sky(p: Picture): void {
  p.light = 'day';
  const warm = p.random.next() > 0.5;
  p.behind(() => {
    solid(
      p,
      box(-200, -200, 2400, 2000),
      p.linear(
        [
          [0, warm ? '#7f9db8' : '#9aa7b0'],
          [0.42, warm ? '#d8e1e4' : '#d3d6d6'],
          [0.6, '#e9e6dc'],
        ],
        90,
      ),
    );
    for (let k = 0; k < 26; k++) {
      const y = p.random.between(0, 620);
      p.add(
        `<ellipse cx="${p.random.between(-100, 2100)}" cy="${y}" rx="${p.random.between(120, 420)}" ry="${p.random.between(14, 60)}" fill="#fff" opacity="${p.random.between(0.12, 0.45)}" ${k < 6 ? p.soft(24) : ''}/>`,
      );
    }
    let hill = `M-200 ${horizon}`;
    for (let x = -200; x <= 2200; x += 60)
      hill += `L${x} ${horizon - 60 - 44 * Math.sin(x / 260) - p.random.between(0, 36)}`;
    solid(p, `${hill}L2200 ${horizon}z`, '#7d8c88');
    let trees = `M-200 ${horizon + 10}`;
    for (let x = -200; x <= 2200; x += 26) trees += `L${x} ${horizon - 16 - p.random.between(0, 46)}`;
    solid(p, `${trees}L2200 ${horizon + 10}z`, '#4d5b4d');
  });
  p.backBlur = 2;
}

/** Boatyard ground, sheds and other boats. */
export function yard(p: Picture): void {
  sky(p);
  p.behind(() => {
    solid(p, box(-100, 640, 620, 240), '#8d9aa0');
    solid(p, 'M-140 650L210 540L560 650z', '#5a4a44');
    for (let k = 0; k < 6; k++) {
      const x = 560 + k * 290;
      p.add(`<path d="${box(x + 90, 140, 7, 640)}" fill="#7c8489"/>`);
      solid(
        p,
        `M${x} 700Q${x + 130} 730 ${x + 260} 690L${x + 220} 790Q${x + 110} 830 ${x + 30} 790z`,
        ['#e8e6df', '#30507a', '#e2ded0', '#6b2a26'][k % 4] ?? '#ddd',
      );
      solid(p, box(x + 100, 790, 60, 90), '#3b3a36');
    }
  });
  const ground = 'M-200 880H2200V1700H-200z';
  solid(
    p,
    ground,
    p.linear(
      [
        [0, '#8f8b80'],
        [1, '#57534a'],
      ],
      90,
    ),
    p.texture('bump', 0.4),
    0.28,
  );
  solid(p, ground, p.texture('grit', 0.8), p.texture('dirt', 2.2), 0.5);
  scatter(p, 420, [-20, 0, 2040, 1], (x, _, s) => {
    const depth = p.random.next() ** 1.5;
    const r = 2 + depth * 13 * (0.4 + s);
    const y = 892 + depth * 610;
    const tone = ['#b5afa2', '#3f3b33', '#78736a', '#9c9384'][Math.floor(s * 4)] ?? '#78736a';
    p.add(`<ellipse cx="${x}" cy="${y}" rx="${r}" ry="${r * 0.5}" fill="${tone}" opacity=".6"/>`);
  });
}

/** Water with ripples and a broken reflection. */
export function water(p: Picture): void {
  sky(p);
  const sea = 'M-200 870H2200V1700H-200z';
  solid(
    p,
    sea,
    p.linear(
      [
        [0, '#a9bac2'],
        [0.25, '#6b8490'],
        [1, '#2b404a'],
      ],
      90,
    ),
  );
  for (let k = 0; k < 420; k++) {
    const t = p.random.next() ** 1.8;
    const y = 880 + t * 700;
    const w = 14 + t * 150;
    p.add(
      `<path d="M${p.random.between(-100, 2100)} ${y}q${w / 2} ${-3 - t * 9} ${w} 0q${-w / 2} ${2 + t * 6} ${-w} 0z" fill="${k % 2 ? '#dfe8ea' : '#1d3038'}" opacity="${0.16 + 0.24 * p.random.next()}"/>`,
    );
  }
}

/** Prop of a cradle from the ground to the hull. */
export function prop(p: Picture, x: number, top: number, foot: number, ground: number): void {
  bar(p, [x, top], [foot, ground], 24, 'rust');
  solid(p, box(x - 44, top - 12, 88, 22, 6), '#6b4a2a');
}

export const windows = (p: Picture, list: string[]): void => {
  for (const d of list) {
    solid(
      p,
      d,
      p.linear(
        [
          [0, '#4a5c68'],
          [0.4, '#15191c'],
          [1, '#2c363c'],
        ],
        70,
      ),
    );
    p.add(`<path d="${d}" fill="none" stroke="#5b5f60" stroke-width="5" opacity=".7"/>`);
  }
};

export const topsides = (p: Picture, tone: [string, string, string]): string =>
  p.linear(
    [
      [0, tone[0]],
      [0.55, tone[1]],
      [1, tone[2]],
    ],
    88,
  );

/** Waterline, reflection and fenders of a boat afloat between two abscissae. */
export function float(p: Picture, x1: number, x2: number, y: number, tone: string): void {
  const w = x2 - x1;
  const mid = x1 + w / 2;
  solid(
    p,
    `M${x1 - 120} ${y + 40}Q${mid} ${y - 16} ${x2 + 120} ${y + 40}L${x2 - 80} ${y + 110}Q${mid} ${y + 170} ${x1 + 80} ${y + 110}z`,
    p.linear(
      [
        [0, '#5f7883', 0],
        [0.3, '#52697a'],
        [0.7, '#4c646f'],
        [1, '#41565f', 0],
      ],
      90,
    ),
  );
  solid(
    p,
    `M${x1 + 60} ${y + 44}Q${mid} ${y + 30} ${x2 - 30} ${y + 44}Q${x2 - 120} ${y + 200} ${mid} ${y + 260}Q${x1 + 200} ${y + 220} ${x1 + 60} ${y + 44}z`,
    p.linear(
      [
        [0, tone, 0.6],
        [1, tone, 0],
      ],
      90,
    ),
  );
  scatter(p, 180, [x1 - 40, y + 20, w + 80, 260], (x, yy, s) =>
    p.add(
      `<path d="M${x} ${yy}q${30 + s * 40} ${-6} ${60 + s * 80} 0q${-30 - s * 40} 5 ${-60 - s * 80} 0z" fill="${s > 0.5 ? '#1d3038' : '#e6edee'}" opacity=".3"/>`,
    ),
  );
}
