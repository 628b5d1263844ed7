import type { Photo } from '@garboard/contract/photos';

/** The picture itself as a button that opens it large; says so while it is still being prepared. */
export function PhotoFrame({
  photo,
  number,
  onOpen,
}: {
  photo: { caption: string; state?: Photo['state']; images: { thumb: string | null } };
  number: number;
  onOpen: () => void;
}) {
  return (
    <button type="button" className="photo-frame" onClick={onOpen}>
      <span className="photo-number">{number}</span>
      {photo.images.thumb ? (
        <img
          src={photo.images.thumb}
          alt={photo.caption || `Photo ${number}, no caption`}
          loading="lazy"
          decoding="async"
        />
      ) : (
        <span className="photo-waiting">
          {photo.state === 'failed' ? 'This photo could not be prepared' : 'Being prepared…'}
        </span>
      )}
    </button>
  );
}
