import type { Drawing } from '@garboard/trade/drawing/svg';
import { Drawn } from '../drawn.tsx';

/** A worksheet's own drawing, set as wide as its column. */
export function DrawingFigure({ drawing }: { drawing: Drawing }) {
  return (
    // No <figure>: it would become a second figure in the PDF's structure, and one without a text.
    <div className="drawing">
      <Drawn drawing={drawing} />
      <p className="drawing-title">{drawing.title}</p>
    </div>
  );
}
