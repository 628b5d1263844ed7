import { boatOutline, type HullKind } from '@garboard/trade/drawing/boat-outline';
import { type BoatPlace, boatAlone, placeAt, pointOf } from '@garboard/trade/drawing/boat-places';
import { type MouseEvent, type PointerEvent, useMemo } from 'react';
import { SvgPicture } from '../../ui/SvgPicture.tsx';

type Spot = Pick<BoatPlace, 'along' | 'height'>;

/**
 * The boat in profile, to be pointed at. Nothing of it is told to a screen reader or reached by keyboard: what stands
 * beside it says and does the same. A finger sets the place by a tap, so that a page can be scrolled over the boat.
 */
export function BoatPointer({
  kind,
  place,
  aloft,
  onPlace,
}: {
  kind: HullKind;
  place: BoatPlace | null;
  aloft: boolean;
  onPlace: (spot: Spot) => void;
}) {
  const { boat, drawing } = useMemo(() => ({ boat: boatOutline(kind), drawing: boatAlone(kind) }), [kind]);
  const pointed = (event: MouseEvent<HTMLElement>) => {
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    const x = ((event.clientX - left) / width) * drawing.width;
    const y = ((event.clientY - top) / height) * drawing.height;
    onPlace(placeAt(boat, [x, y], aloft));
  };
  const dragged = (event: PointerEvent<HTMLElement>) => {
    if (event.pointerType !== 'touch' && event.buttons === 1) pointed(event);
  };
  const [x, y] = place ? pointOf(boat, place, aloft) : [0, 0];
  return (
    <div className="boat-pointer" aria-hidden="true" onClick={pointed} onPointerMove={dragged}>
      <SvgPicture svg={drawing.svg} />
      {place ? (
        <svg viewBox={`0 0 ${drawing.width} ${drawing.height}`} aria-hidden="true">
          <path className="boat-cross" d={`M${x} 0V${drawing.height}M0 ${y}H${drawing.width}`} />
          <circle className="boat-spot" cx={x} cy={y} r={9} />
          {place.side === 'port' ? <circle className="boat-port" cx={x} cy={y} r={14} /> : null}
        </svg>
      ) : null}
    </div>
  );
}
