import { circle, shape, thin, tube } from './panels.ts';
import { wash } from './style.ts';

// Parts of standing rigging, drawn upright about their own origin and then placed.

/** A swaged eye: strand above, barrel from 36 to 92, eye below with its middle at 118. */
export const swagedEye = (): string =>
  tube('M0 -4 V36', 17) +
  thin('M-7 0 L7 8 M-7 7 L7 15 M-7 14 L7 22 M-7 21 L7 29 M-7 28 L4 34') +
  shape('M-15 40 L-12 36 H12 L15 40 V92 L10 100 V104 H-10 V100 L-15 92 Z') +
  thin('M-15 40 H15 M-15 92 H15 M11 42 V90') +
  shape('M-10 103 C-10 108 -22 108 -22 122 A22 22 0 0 0 22 122 C22 108 10 108 10 103 Z') +
  circle(0, 122, 10);

/** A rigging screw with the stay above it, from the crown of its lower fork at the origin upward. */
export const riggingScrew = (): string =>
  tube('M0 -84 V-160', 5) +
  shape('M-4 -70 H4 V-88 L2.5 -91 H-2.5 L-4 -88 Z') +
  shape('M-3 4 V-74 H3 V4 Z') +
  thin('M-3 -13 h6 M-3 -16 h6 M-3 -65 h6 M-3 -68 h6') +
  shape('M-8 -20 H8 V-28 H5.5 V-54 H8 V-62 H-8 V-54 H-5.5 V-28 H-8 Z', wash) +
  thin('M-2.5 -30 V-40 M2.5 -30 V-40 M-2.5 -43 V-52 M2.5 -43 V-52');
