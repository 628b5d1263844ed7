import type { Picture, Stops } from './picture.ts';

/** How a round thing of one material shades from edge to edge: shadow, body, light, glint. */
export interface Material {
  shadow: string;
  body: string;
  light: string;
  glint: string;
}

export const materials = {
  steel: { shadow: '#23272c', body: '#868d94', light: '#c9cfd4', glint: '#ffffff' },
  dullSteel: { shadow: '#26282a', body: '#6b6e70', light: '#9a9d9e', glint: '#c9cbcb' },
  bronze: { shadow: '#2b1f10', body: '#8a6a35', light: '#c39f5c', glint: '#f4dfae' },
  brass: { shadow: '#37280c', body: '#a8842f', light: '#dcbb62', glint: '#fff3c4' },
  oldBronze: { shadow: '#1d1a12', body: '#635637', light: '#8d7d55', glint: '#b9ab85' },
  pinkMetal: { shadow: '#4a2218', body: '#b5694f', light: '#d99379', glint: '#f6c6b2' },
  zinc: { shadow: '#3a3d3f', body: '#8e9290', light: '#b7bab7', glint: '#dfe1dd' },
  castIron: { shadow: '#17181a', body: '#45474a', light: '#707377', glint: '#9ea1a4' },
  rust: { shadow: '#2a140a', body: '#7a4424', light: '#a8673a', glint: '#c98e5f' },
  engineGrey: { shadow: '#1b2227', body: '#5a6a74', light: '#8fa0aa', glint: '#cfdbe1' },
  engineGreen: { shadow: '#10241c', body: '#3c6a55', light: '#6f9c85', glint: '#c4dfd0' },
  rubber: { shadow: '#08090a', body: '#26282a', light: '#4b4e51', glint: '#8e9295' },
  greyHose: { shadow: '#2c2d2e', body: '#77797a', light: '#a3a5a5', glint: '#d9dada' },
  whiteHose: { shadow: '#56554f', body: '#b9b8af', light: '#dedcd2', glint: '#ffffff' },
  orangeHose: { shadow: '#4a1a06', body: '#c2571b', light: '#ea8a4a', glint: '#ffd6b6' },
  yellowTube: { shadow: '#5a4614', body: '#b9933a', light: '#dcbf70', glint: '#fff2cb' },
  white: { shadow: '#6b6c69', body: '#c8c9c5', light: '#eeeeea', glint: '#ffffff' },
  black: { shadow: '#050506', body: '#1d1e20', light: '#3d3f42', glint: '#8c8f93' },
  red: { shadow: '#3d0606', body: '#a91717', light: '#d94a3d', glint: '#ffc2b4' },
  blue: { shadow: '#061b3a', body: '#1f4f8f', light: '#4f83c4', glint: '#c3dcf7' },
  yellow: { shadow: '#5a3f00', body: '#d1a417', light: '#f0cf58', glint: '#fff5c9' },
  green: { shadow: '#062a14', body: '#1e7040', light: '#4da36f', glint: '#c2ecd2' },
  glove: { shadow: '#10283f', body: '#2f6ea5', light: '#5d9bcf', glint: '#a9d1f0' },
  lagging: { shadow: '#55524a', body: '#a8a498', light: '#cfccc0', glint: '#e7e5db' },
} satisfies Record<string, Material>;

export type MaterialName = keyof typeof materials;

/** Gradient stops across a cylinder lit from one side, with a little light returning at the far edge. */
export function roundStops(m: Material): Stops {
  return [
    [0, m.shadow],
    [0.12, m.body],
    [0.28, m.light],
    [0.34, m.glint],
    [0.42, m.light],
    [0.66, m.body],
    [0.92, m.shadow],
    [1, m.body],
  ];
}

/** Fill for a cylinder whose axis runs along x (angle 90: across y) or along y (angle 0: across x). */
export const round = (p: Picture, name: MaterialName, angle = 90): string =>
  p.linear(roundStops(materials[name]), angle);

/** Fill for a ball or boss lit from the upper left. */
export const ball = (p: Picture, name: MaterialName): string => {
  const m = materials[name];
  return p.radial(
    [
      [0, m.glint],
      [0.18, m.light],
      [0.6, m.body],
      [1, m.shadow],
    ],
    0.36,
    0.3,
    0.75,
  );
};
