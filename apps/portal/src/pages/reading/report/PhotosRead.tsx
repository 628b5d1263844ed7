import type { SnapshotPhoto } from '@garboard/contract/report-snapshot';
import { formatInstantDay } from '../../../ui/format.ts';
import { usePhotoAddress } from './photoAddress.ts';

/** A finding's photos with their captions as this report was issued; each opens by itself. */
export function PhotosRead({
  reportId,
  number,
  photos,
  timeZone,
}: {
  reportId: string;
  number: number;
  photos: readonly SnapshotPhoto[];
  timeZone: string;
}) {
  if (!photos.length) return null;
  return (
    <ul className="report-photos">
      {photos.map((photo, at) => (
        <li key={photo.id}>
          <PhotoRead
            reportId={reportId}
            photo={photo}
            name={`Photo ${number}.${at + 1}`}
            timeZone={timeZone}
          />
        </li>
      ))}
    </ul>
  );
}

/** One photo under its name in the report. */
export function PhotoRead({
  reportId,
  photo,
  name,
  timeZone,
}: {
  reportId: string;
  photo: SnapshotPhoto;
  name: string;
  timeZone: string;
}) {
  const address = usePhotoAddress(reportId, photo.id);
  const taken = photo.takenAt ? `Taken ${formatInstantDay(photo.takenAt, timeZone)}` : '';
  return (
    <figure>
      <a href={address} target="_blank" rel="noreferrer">
        <img
          src={address}
          alt={photo.caption || `${name}, no caption`}
          width={photo.width}
          height={photo.height}
          loading="lazy"
        />
      </a>
      <figcaption className="small">
        <strong>{name}</strong> <span dir="auto">{photo.caption}</span> <span className="soft">{taken}</span>
      </figcaption>
    </figure>
  );
}
