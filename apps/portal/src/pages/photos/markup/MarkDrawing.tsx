import { labelType, markColour, markColours, markPath, markStroke } from '@garboard/contract/mark-paths';
import type { Mark } from '@garboard/contract/photos';
import { useId } from 'react';
import type { Size } from './geometry.ts';

/** A mark as the worker will burn it in, in pixels of a picture of this size. */
export function MarkDrawing({ mark, size, thumb }: { mark: Mark; size: Size; thumb: string | null }) {
  const stroke = markStroke(size);
  const colour = markColour(mark);
  if (mark.shape === 'blur') return <Blur mark={mark} size={size} thumb={thumb} />;
  if (mark.shape === 'label') {
    const { x, y, width, height, type, pad } = labelPlate(mark, size);
    return (
      <>
        <rect x={x} y={y} width={width} height={height} fill={colour} />
        <text
          x={x + pad}
          y={y + pad + type * 0.82}
          fill="#fff"
          fontSize={type}
          fontWeight={700}
          textLength={width - 2 * pad}
          lengthAdjust="spacingAndGlyphs"
        >
          {mark.text}
        </text>
      </>
    );
  }
  const path = markPath(mark, size);
  const line = { d: path, fill: 'none', strokeLinecap: 'round', strokeLinejoin: 'round' } as const;
  return (
    <>
      <path {...line} stroke={markColours.halo} strokeWidth={stroke * 2} />
      <path {...line} stroke={colour} strokeWidth={stroke} />
      {mark.shape === 'arrow' ? (
        <circle
          cx={mark.from.x * size.width}
          cy={mark.from.y * size.height}
          r={stroke * 1.8}
          fill={colour}
          stroke={markColours.halo}
          strokeWidth={stroke / 2}
        />
      ) : null}
    </>
  );
}

// Bold capitals and small letters together are about this wide, as a share of their height.
const letter = 0.61;

/** Where a label's plate stands, kept within the picture as the worker keeps it. */
export function labelPlate(mark: Extract<Mark, { shape: 'label' }>, size: Size) {
  const { type, pad } = labelType(size);
  const width = Math.min(size.width, mark.text.length * type * letter + 2 * pad);
  const height = type + 2 * pad;
  return {
    x: Math.max(0, Math.min(mark.at.x * size.width, size.width - width)),
    y: Math.max(0, Math.min(mark.at.y * size.height, size.height - height)),
    width,
    height,
    type,
    pad,
  };
}

/** A blurred region shown by a few grey patches of the thumbnail: what is hidden can't be made out here either. */
function Blur({
  mark,
  size,
  thumb,
}: {
  mark: Extract<Mark, { shape: 'blur' }>;
  size: Size;
  thumb: string | null;
}) {
  const id = useId();
  const x = Math.min(mark.from.x, mark.to.x) * size.width;
  const y = Math.min(mark.from.y, mark.to.y) * size.height;
  const width = Math.max(1, Math.abs(mark.to.x - mark.from.x) * size.width);
  const height = Math.max(1, Math.abs(mark.to.y - mark.from.y) * size.height);
  const spread = Math.max(width, height) / 5;
  return (
    <svg
      x={x}
      y={y}
      width={width}
      height={height}
      viewBox={`${x} ${y} ${width} ${height}`}
      aria-hidden="true"
    >
      <rect x={x} y={y} width={width} height={height} fill="#b9b3a6" />
      {thumb ? (
        <>
          <filter id={id} filterUnits="userSpaceOnUse" x={x} y={y} width={width} height={height}>
            <feGaussianBlur stdDeviation={spread} edgeMode="duplicate" />
          </filter>
          <image href={thumb} width={size.width} height={size.height} filter={`url(#${id})`} />
        </>
      ) : null}
    </svg>
  );
}
