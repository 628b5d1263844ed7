import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import { writtenDayOf } from './format.ts';
import type { Sources } from './parts.tsx';
import { type PlacedPhoto, photoRows } from './photo-layout.ts';

interface Props extends Sources {
  finding: SnapshotFinding;
  timeZone: string;
}

/** A finding's photos with their captions, in rows whose photos share a height. */
export function Photos({ finding, timeZone, photoUrl }: Props) {
  const names = new Map(finding.photos.map(({ id }, index) => [id, `Photo ${finding.number}.${index + 1}`]));
  return photoRows(finding.photos).map((row) => (
    <div className="photo-row" key={row[0]?.photo.id}>
      {row.map((placed) => (
        <Figure
          key={placed.photo.id}
          placed={placed}
          name={names.get(placed.photo.id) ?? ''}
          timeZone={timeZone}
          photoUrl={photoUrl}
        />
      ))}
    </div>
  ));
}

interface FigureProps extends Sources {
  placed: PlacedPhoto;
  name: string;
  timeZone: string;
}

/** One photo at its place, with its name, caption and day. */
export function Figure({ placed: { photo, width, height }, name, timeZone, photoUrl }: FigureProps) {
  const caption = photo.caption.trim();
  return (
    // No <figure>: it would become a second figure in the PDF's structure, and one without a text.
    <div className="photo" style={{ width: `${Math.max(width, 24).toFixed(2)}mm` }}>
      <img
        src={photoUrl(photo.id)}
        alt={`${name}: ${caption || 'no caption'}`}
        width={photo.width}
        height={photo.height}
        style={{ width: `${width.toFixed(2)}mm`, height: `${height.toFixed(2)}mm` }}
        fetchPriority="low"
      />
      <p className="photo-caption" dir="auto">
        <b>{name}</b> {caption}
        {photo.takenAt && <span className="taken"> Taken {writtenDayOf(photo.takenAt, timeZone)}</span>}
      </p>
    </div>
  );
}
