import { ball, round } from './materials.ts';
import { bar, oval, shadow, solid, tube } from './parts.ts';
import type { Picture } from './picture.ts';
import { timber, yardBehind } from './surfaces.ts';
import { finger, label, lettering } from './surveyor.ts';
import { glare } from './wear.ts';

/** Head of a dry-powder extinguisher with its gauge; `needle` from -1 (empty) to 1 (overfull). */
export function extinguisher(p: Picture, needle: number): void {
  p.behind(() => timber(p));
  p.backBlur = 3;
  const body = 'M560 1700V980Q560 760 800 720H1200Q1440 760 1440 980V1700z';
  shadow(p, body, 60, 20, 50, 0.7);
  solid(p, body, round(p, 'red', 0), p.texture('bumpFine', 0.8), 0.12);
  label(p, 1000, 1240, 700, 420, ['DRY POWDER', '2 kg', 'A  B  C'], {
    tone: '#e9e6dc',
    head: '#20262c',
    worn: needle < 0,
  });
  const head = 'M800 730L830 520H1170L1200 730z';
  shadow(p, head, 20, 20, 20);
  solid(p, head, round(p, 'steel', 0), p.texture('brushed', 0.8), 0.4);
  if (needle < 0) solid(p, head, p.texture('rust', 0.8));
  bar(p, [760, 470], [1620, 360], 110, 'black', { over: p.texture('bumpFine', 0.5), overOpacity: 0.4 });
  bar(p, [800, 560], [1580, 640], 90, 'black');
  tube(p, 'M700 560C600 520 560 400 640 340S820 380 780 460', 22, 'yellow');
  bar(p, [840, 640], [420, 700], 130, 'black', { cap: true });
  p.group('transform="translate(1000 610) scale(1.16)"', () => {
    shadow(p, oval(0, 0, 236), 14, 22, 18, 0.65);
    solid(p, oval(0, 0, 234), ball(p, 'brass'));
    solid(p, oval(0, 0, 204), '#f3f1ea');
    const wedge = (from: number, to: number, colour: string): void => {
      const pt = (deg: number): string => {
        const a = ((deg - 90) * Math.PI) / 180;
        return `${Math.cos(a) * 176} ${Math.sin(a) * 176}`;
      };
      p.add(
        `<path d="M${pt(from)}A176 176 0 0 1 ${pt(to)}" stroke="${colour}" stroke-width="56" fill="none"/>`,
      );
    };
    wedge(-118, -34, '#bf1f1a');
    wedge(-34, 34, '#1f8a43');
    wedge(34, 118, '#bf1f1a');
    lettering(p, 0, 116, 38, 'bar', '#222222');
    p.group(`transform="rotate(${needle * 100})"`, () => {
      p.add(
        '<path d="M-9 40L-4 -160L0 -176L4 -160L9 40z" fill="#000" opacity=".35" transform="translate(8 10)"/>',
      );
      p.add('<path d="M-9 40L-4 -160L0 -176L4 -160L9 40z" fill="#111"/>');
    });
    solid(p, oval(0, 0, 24), ball(p, 'black'));
    solid(
      p,
      oval(0, 0, 204),
      p.linear(
        [
          [0, '#ffffff', 0.55],
          [0.36, '#ffffff', 0.06],
          [0.4, '#ffffff', 0],
          [1, '#000000', 0.2],
        ],
        50,
      ),
    );
    if (needle < 0) solid(p, oval(0, 0, 204), p.texture('dirt', 0.9));
  });
  finger(p, needle < 0 ? 760 : 1260, 760, needle < 0 ? -30 : -150, 0.85);
  glare(p, 720, 1100, 34, 380, 0.5);
}

/** Year pressed into the bottom of an extinguisher held upside down. */
export function extinguisherStamp(p: Picture, year: string): void {
  p.light = 'day';
  p.behind(() => yardBehind(p));
  p.backBlur = 8;
  shadow(p, oval(1000, 760, 620), 30, 50, 50, 0.5);
  solid(p, oval(1000, 760, 620, 600), ball(p, 'red'), p.texture('bumpFine', 0.8), 0.15);
  p.add(
    `<path d="${oval(1000, 760, 560, 540)}" fill="none" stroke="#3d0606" stroke-width="26" opacity=".7"/>`,
  );
  solid(
    p,
    oval(1000, 760, 520, 500),
    p.radial(
      [
        [0, '#c4392c'],
        [0.7, '#94150f'],
        [1, '#4d0705'],
      ],
      0.6,
      0.65,
    ),
  );
  for (const [dx, colour, o] of [
    [6, '#ffb3a0', 0.75],
    [0, '#3d0504', 1],
  ] as const) {
    lettering(p, 1000 + dx, 830 + dx, 230, year, colour, `font-weight="bold" opacity="${o}"`);
    lettering(p, 1000 + dx, 560 + dx, 84, 'EN 3  14 bar', colour, `opacity="${o}"`);
    lettering(p, 1000 + dx, 1000 + dx, 84, 'TS -30 +60', colour, `opacity="${o}"`);
  }
  solid(p, oval(1000, 760, 610, 590), p.texture('rust', 1.2), p.texture('dirt', 1.2), 0.5);
  finger(p, 740, 960, -40, 1.1);
  finger(p, 1560, 1150, -130, 1.4);
  glare(p, 760, 420, 240, 90, 0.5);
}
