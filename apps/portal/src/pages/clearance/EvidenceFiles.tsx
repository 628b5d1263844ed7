import type { Clearance } from '@garboard/contract/clearances';
import { useState } from 'react';
import { formatBytes } from '../../ui/format.ts';
import { PhotoViewer } from '../../ui/PhotoViewer.tsx';

type EvidenceFile = Clearance['files'][number];

/** Photos sent as evidence as pictures that open large, documents as links. */
export function EvidenceFiles({ files }: { files: readonly EvidenceFile[] }) {
  const [open, setOpen] = useState<number | null>(null);
  const photos = files.filter((file) => file.mediaType.startsWith('image/'));
  const documents = files.filter((file) => !file.mediaType.startsWith('image/'));
  return (
    <>
      {photos.length ? (
        <ul className="photos photos-small">
          {photos.map((file, at) => (
            <li key={file.id}>
              <button type="button" className="photo-frame" onClick={() => setOpen(at)}>
                {file.thumbUrl ? (
                  <img src={file.thumbUrl} alt={file.fileName} loading="lazy" />
                ) : (
                  <span className="photo-waiting">{file.fileName}</span>
                )}
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {documents.length ? (
        <ul className="plain-list">
          {documents.map((file) => (
            <li key={file.id}>
              <a href={file.url} target="_blank" rel="noreferrer">
                {file.fileName}
              </a>{' '}
              <span className="soft">{formatBytes(file.bytes)}</span>
            </li>
          ))}
        </ul>
      ) : null}
      {open === null ? null : (
        <PhotoViewer
          photos={photos.map((file) => ({ id: file.id, src: file.url, caption: file.fileName }))}
          startAt={open}
          onClose={() => setOpen(null)}
        />
      )}
    </>
  );
}
