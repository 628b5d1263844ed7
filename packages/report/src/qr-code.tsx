import { encode } from 'uqr';

/** Modules left white around the square, as its standard asks (ISO/IEC 18004). */
const quiet = 4;

/** A QR code, drawn: runs of dark modules of each row as one path, sharp at any size. */
export function QrCode({ text, label }: { text: string; label: string }) {
  const { data, size } = encode(text, { ecc: 'M', border: 0 });
  const edge = size + 2 * quiet;
  return (
    <svg
      className="qr-code"
      role="img"
      aria-label={label}
      viewBox={`${-quiet} ${-quiet} ${edge} ${edge}`}
      shapeRendering="crispEdges"
    >
      <rect x={-quiet} y={-quiet} width={edge} height={edge} fill="#fff" />
      <path d={data.map(rowPath).join('')} fill="#000" />
    </svg>
  );
}

function rowPath(row: boolean[], y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x++) {
    if (!row[x]) continue;
    const start = x;
    while (row[x + 1]) x++;
    path += `M${start} ${y}h${x - start + 1}v1H${start}z`;
  }
  return path;
}
