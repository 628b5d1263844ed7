import type { Drawing } from '@garboard/trade/drawing/svg';

/** A worksheet's own drawing, set as wide as its column. */
export function DrawingFigure({ drawing }: { drawing: Drawing }) {
  // Drawn by our own module, which escapes every word in it; React would escape the drawing itself.
  const markup = { dangerouslySetInnerHTML: { __html: drawing.svg } };
  return (
    <figure className="drawing">
      <div {...markup} />
      <figcaption>{drawing.title}</figcaption>
    </figure>
  );
}
