import { fine, fullWidth, ink, muted, outline, paper, signal, wash } from '../../drawing/style.ts';
import { type Drawing, el, label, picture } from '../../drawing/svg.ts';
import { formatNumber } from '../core/working.ts';

/** The worn place in section: mm, and the words for each measure. */
export interface WornSection {
  shaft: number;
  lost: number;
  play?: number;
  words: { shaft: string; asNew: string; lost: string; play: string };
  /** Drawn in the signal colour, and said in words, when the wear or the play is over its limit. */
  strong: boolean;
}

const centre = { x: 170, y: 150 };
const shaftRadius = 84;
const shellWide = 26;
/** The larger of wear and play is drawn this wide (px across the diameter), so that both can be seen. */
const drawnGap = 40;

/** Slanting strokes in a ring: cut material. */
function hatchedRing(cx: number, cy: number, inner: number, outer: number): string {
  const strokes = Array.from({ length: 60 }, (_, i) => {
    const a = (i / 60) * 2 * Math.PI;
    const b = a + 0.16;
    return `M${(cx + inner * Math.cos(a)).toFixed(1)} ${(cy + inner * Math.sin(a)).toFixed(1)}L${(cx + outer * Math.cos(b)).toFixed(1)} ${(cy + outer * Math.sin(b)).toFixed(1)}`;
  });
  return el('path', { d: strokes.join(''), stroke: muted, 'stroke-width': fine });
}

/** Words at the right with a line to what they name, a dot at its end. */
function pointer(words: string, y: number, to: { x: number; y: number }, colour = ink): string {
  return (
    el('polyline', {
      points: `${to.x},${to.y} 330,${y - 4} 344,${y - 4}`,
      stroke: muted,
      'stroke-width': fine,
    }) +
    el('circle', { cx: to.x, cy: to.y, r: 2.5, fill: colour }) +
    label(words, { x: 350, y, fill: colour })
  );
}

/** The shaft lying in its bearing, wear and play drawn larger than they are. */
export function drawWornSection(section: WornSection): Drawing {
  const { shaft, lost, play, words, strong } = section;
  const scale = drawnGap / Math.max(lost, play ?? 0, shaft * 1e-4);
  const times = scale / (shaftRadius / (shaft / 2));
  const gap = (play ?? 0) * scale;
  const bore = shaftRadius + gap / 2;
  const asNew = shaftRadius + (lost * scale) / 2;
  // The shaft lies on the bottom of the bearing; all the play is above it.
  const shaftY = centre.y + gap / 2;
  const colour = strong ? signal : ink;
  const at = (y: number, radius: number, degrees: number) => ({
    x: centre.x + radius * Math.cos((degrees * Math.PI) / 180),
    y: y + radius * Math.sin((degrees * Math.PI) / 180),
  });
  const bearing =
    play === undefined
      ? []
      : [
          el('circle', {
            cx: centre.x,
            cy: centre.y,
            r: bore + shellWide,
            fill: wash,
            stroke: ink,
            'stroke-width': outline,
          }),
          hatchedRing(centre.x, centre.y, bore, bore + shellWide),
          el('circle', {
            cx: centre.x,
            cy: centre.y,
            r: bore,
            fill: paper,
            stroke: ink,
            'stroke-width': outline,
          }),
        ];
  const playMiddle = { x: centre.x, y: (shaftY - shaftRadius + centre.y - bore) / 2 };
  const note =
    lost === 0 && !play
      ? 'No wear or play to draw'
      : times > 1.05
        ? `Wear and play are drawn ${formatNumber(times, 2)} times larger`
        : 'Drawn to scale';
  const description = `Section at the worn place: ${words.shaft}, ${words.asNew}, ${words.lost}${play === undefined ? '' : `, ${words.play}`}.`;
  return picture(
    { key: 'section', title: 'Shaft and bearing in section', description, width: fullWidth, height: 310 },
    ...bearing,
    el('circle', {
      cx: centre.x,
      cy: shaftY,
      r: shaftRadius,
      fill: wash,
      stroke: colour,
      'stroke-width': outline,
    }),
    el('circle', {
      cx: centre.x,
      cy: shaftY,
      r: asNew,
      stroke: muted,
      'stroke-width': outline,
      'stroke-dasharray': '4 3',
    }),
    el('line', {
      x1: centre.x - 8,
      x2: centre.x + 8,
      y1: shaftY,
      y2: shaftY,
      stroke: muted,
      'stroke-width': fine,
    }),
    el('line', {
      x1: centre.x,
      x2: centre.x,
      y1: shaftY - 8,
      y2: shaftY + 8,
      stroke: muted,
      'stroke-width': fine,
    }),
    ...(play === undefined ? [] : [pointer(words.play, 60, playMiddle, colour)]),
    pointer(words.asNew, 100, at(shaftY, asNew, -24)),
    pointer(words.lost, 140, at(shaftY, (shaftRadius + asNew) / 2, -8), colour),
    pointer(words.shaft, 180, at(shaftY, shaftRadius - 12, 14)),
    ...(play === undefined ? [] : [pointer('bearing', 220, at(centre.y, bore + shellWide / 2, 32))]),
    label(note, { x: 350, y: 262, fill: muted }),
  );
}
