import type { SnapshotFinding, SnapshotPhoto } from '@garboard/contract/report-snapshot';
import { writtenDayOf } from './format.ts';
import type { Sources } from './parts.tsx';

interface Props extends Sources {
  finding: SnapshotFinding;
  timeZone: string;
}

interface Placed {
  photo: SnapshotPhoto;
  name: string;
}

// Millimetres: the column beside the margin, the gap between two photos, and the most one photo may take.
const columnWidth = 136;
const gap = 3;
const aloneWidth = 92;
const tallest = 96;
const tallestLast = 66;

/** A finding's photos in rows of two of the same height, so that neither is cropped; a last single one stays as small as they. */
export function Photos({ finding, timeZone, photoUrl }: Props) {
  const placed = finding.photos.map((photo, index) => ({
    photo,
    name: `Photo ${finding.number}.${index + 1}`,
  }));
  return rowsOfTwo(placed).map((row) => (
    <div className="photo-row" key={row[0]?.photo.id}>
      {row.map(({ photo, name }) => (
        <Figure
          key={photo.id}
          photo={photo}
          name={name}
          timeZone={timeZone}
          photoUrl={photoUrl}
          width={rowHeight(row, placed.length) * aspect(photo)}
        />
      ))}
    </div>
  ));
}

function rowsOfTwo(placed: readonly Placed[]): Placed[][] {
  return placed.flatMap((_, index) => (index % 2 === 0 ? [placed.slice(index, index + 2)] : []));
}

/** Width over height. */
export function aspect({ width, height }: SnapshotPhoto): number {
  return width / height;
}

/** The height in millimetres at which the photos of a row fill it together. */
function rowHeight(row: readonly Placed[], inAll: number): number {
  const isLastOfMany = row.length === 1 && inAll > 1;
  const pairWidth = columnWidth - gap;
  const width = row.length === 2 ? pairWidth : isLastOfMany ? pairWidth / 2 : aloneWidth;
  const sum = row.reduce((total, { photo }) => total + aspect(photo), 0);
  return Math.min(isLastOfMany ? tallestLast : tallest, width / sum);
}

function Figure({
  photo,
  name,
  timeZone,
  photoUrl,
  width,
}: Placed & Omit<Props, 'finding'> & { width: number }) {
  const caption = photo.caption.trim();
  return (
    // No <figure>: it would become a second figure in the PDF's structure, and one without a text.
    <div className="photo" style={{ width: `${width.toFixed(2)}mm` }}>
      <img
        src={photoUrl(photo.id)}
        alt={`${name}: ${caption || 'no caption'}`}
        width={photo.width}
        height={photo.height}
        fetchPriority="low"
      />
      <p className="photo-caption" dir="auto">
        <strong>{name}</strong> {caption}
        {photo.takenAt && <span className="taken"> Taken {writtenDayOf(photo.takenAt, timeZone)}</span>}
      </p>
    </div>
  );
}
